const systems = [
  ['iPhone', /iPhone/],
  ['iPad', /iPad/],
  ['Android', /Android/],
  ['Windows', /Windows/],
  ['macOS', /Macintosh/],
  ['Linux', /Linux/],
] as const;

/** The kind of device that a browser says it runs on; undefined where it says none that is known. */
export const deviceWords = (agent: string): string | undefined =>
  systems.find(([, form]) => form.test(agent))?.[0];
