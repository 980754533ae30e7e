import { describe, expect, test } from 'vitest';
import { nameForm, numberForm } from '#server/people/names.ts';

describe('truth', () => {
  test.each([
    '<script>alert(1)</script>',
    '"><img src=x>',
    'a\u202Eb',
    'a\u0000b',
    '{{x}}',
    '=1+1',
  ])('%j is no name', (text) => {
    expect(nameForm.safeParse(text).success).toBe(false);
  });

  test.each(["O'Neil & Sons", 'José Núñez', 'Crew 1 (north)', 'Nguyễn Văn A', '李小龍'])(
    '%s is a name',
    (text) => {
      expect(nameForm.parse(`  ${text} `)).toBe(text);
    },
  );

  test('a number is letters, digits and what joins them', () => {
    expect(numberForm.parse(' B-17/2 ')).toBe('B-17/2');
    expect(numberForm.safeParse('<b>').success).toBe(false);
  });
});
