import { MisuseError } from './command.ts';

/** `joint=seam,corner=inside` as questions and values. */
export function siteAnswers(text: string): Readonly<Record<string, string>> {
  const answers = text.split(',').filter((part) => part.trim() !== '');
  return Object.fromEntries(
    answers.map((answer) => {
      const [question = '', value, ...rest] = answer.split('=').map((part) => part.trim());
      if (question === '' || !value || rest.length > 0) {
        throw new MisuseError(`--site takes question=value, and "${answer}" is not that.`);
      }
      return [question, value];
    }),
  );
}
