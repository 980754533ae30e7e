/** Mean and standard deviation (of these values, not of a sample) of difficulties. */
export type Spread = { readonly mean: number; readonly spread: number };

/** By multiplication, which gives the same on every machine; powers need not. */
export const square = (value: number): number => value * value;

export function spreadOf(values: readonly number[]): Spread {
  if (values.length === 0) return { mean: 0, spread: 0 };
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  const squares = values.reduce((sum, value) => sum + square(value - mean), 0);
  return { mean, spread: Math.sqrt(squares / values.length) };
}

export type SpreadOverForms = {
  readonly forms: number;
  /** Of the mean difficulties of the forms. */
  readonly mean: number;
  readonly spread: number;
  readonly least: number;
  readonly most: number;
};

/** How alike forms are: how far their mean difficulties lie apart. */
export function spreadOver(forms: readonly { readonly difficulty: Spread }[]): SpreadOverForms {
  const means = forms.map(({ difficulty }) => difficulty.mean);
  return {
    forms: forms.length,
    ...spreadOf(means),
    least: means.reduce((a, b) => Math.min(a, b), Infinity),
    most: means.reduce((a, b) => Math.max(a, b), -Infinity),
  };
}
