import { render, screen, within } from '@testing-library/svelte';
import { describe, expect, test } from 'vitest';
import { wilson } from '#engine/statistics/wilson.ts';
import Overview from '#ui/numbers/Overview.svelte';

const share = (passed: number, of: number) =>
  ({ enough: true, value: { share: passed / of, interval: wilson(passed, of) } }) as const;

const show = (whole: object, precision: object) =>
  render(Overview, {
    company: 'x',
    schemes: [
      {
        id: 's',
        title: { en: 'Installer', es: 'Instalador' },
        whole: whole as { sat: number; passed: ReturnType<typeof share> },
        parts: [
          {
            id: 'p',
            kind: 'written' as const,
            title: { en: 'Knowledge', es: 'Conocimientos' },
            sat: 112,
            passed: share(90, 112),
            precision: precision as { enough: false; have: number; need: number },
          },
        ],
      },
    ],
  });

describe('truth', () => {
  test('of a scheme it says how many passed every part, of those who sat them all', () => {
    show({ sat: 40, passed: share(30, 40) }, { enough: false, have: 80, need: 100 });
    const scheme = within(screen.getByRole('region', { name: 'Installer' }));
    const heading = scheme.getByRole('heading', { name: /^All parts together/ });
    expect(heading).toHaveTextContent('40 people sat every part');
    expect(heading.parentElement).toHaveTextContent('Passed every part at the first try: 3 in 4.');
    expect(heading.parentElement).toHaveTextContent('75 % · the true share lies between 60 % and');
    expect(scheme.getByText(/How sure a result is: Too few to say/)).toBeInTheDocument();
  });

  test('with too few it says so; where nobody sat every part it says nothing of them', () => {
    const value = { outcome: 'not-converged', reason: 'out-of-cycles', cycles: 500 };
    const { unmount } = show(
      { sat: 4, passed: { enough: false, have: 4, need: 21 } },
      { enough: true, value },
    );
    expect(screen.getByText('Too few to say: it takes 21, there are 4.')).toBeInTheDocument();
    expect(screen.getByText(/came to no end in 500 rounds/)).toBeInTheDocument();
    expect(screen.queryByText(/Reliability/)).toBeNull();
    unmount();
    show({ sat: 0, passed: { enough: false, have: 0, need: 21 } }, { enough: true, value });
    expect(screen.queryByText(/All parts together/)).toBeNull();
  });
});
