import { render, screen } from '@testing-library/svelte';
import { afterEach, expect, test } from 'vitest';
import type { Source } from '#engine/compile/content.ts';
import { language } from '#ui/language/language.svelte.ts';
import VerdictSheet from '#ui/written/VerdictSheet.svelte';

afterEach(() => language.choose('en'));

const both = (text: string) => ({ en: text, es: text });
const unsaid = { publisher: undefined, clause: undefined, year: undefined, address: undefined };
const show = (source: Pick<Source, 'id' | 'title'> & Partial<Source>) =>
  render(VerdictSheet, {
    id: 'verdict',
    ask: both('?'),
    verdict: { kind: 'find-fault', outcome: 'right', point: both('!'), because: both('.') },
    unit: undefined,
    source: { ...unsaid, ...source, read: 'memory' },
  });

test('what nobody published is called common practice in the language of the reader', () => {
  language.choose('es');
  show({ id: 'common-practice' as Source['id'], title: 'Common practice of the trade' });
  expect(screen.getByText('Fuente: práctica común')).toBeInTheDocument();
});

test('what was published keeps its title, clause and year', () => {
  const published = { publisher: 'A bureau', title: 'Walls', clause: '3.2', year: 2005 };
  show({ id: 'walls' as Source['id'], ...published });
  expect(screen.getByText('Source: Walls, 3.2, 2005')).toBeInTheDocument();
});
