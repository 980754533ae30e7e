import type { Scheme, SchemeId } from '#engine/exam/scheme.ts';
import type { Opened } from '#engine/compile/opened.ts';

/** Schemes without a fault that name only what is without a fault, other schemes among it. */
export function soundSchemes(
  schemes: ReadonlyMap<SchemeId, Opened<Scheme>>,
  methods: ReadonlyMap<string, unknown>,
  families: ReadonlyMap<string, unknown>,
): ReadonlyMap<SchemeId, Scheme> {
  const standsAlone = ({ covers, parts }: Scheme): boolean =>
    [...covers.keys()].every((id) => methods.has(id)) &&
    parts.every((part) => part.kind !== 'takeoff' || part.families.every((id) => families.has(id)));
  let sound = new Map(
    [...schemes].flatMap(([id, { file, value }]) =>
      file.faults.length === 0 && standsAlone(value) ? [[id, value] as const] : [],
    ),
  );
  for (;;) {
    const left = new Map(
      [...sound].filter(([, { requires }]) => requires.every((id) => sound.has(id))),
    );
    if (left.size === sound.size) return sound;
    sound = left;
  }
}
