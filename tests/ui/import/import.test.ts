import { render, screen, within } from '@testing-library/svelte';
import { describe, expect, test } from 'vitest';
import type { CellFault, FileFault } from '#engine/record/import-plan.ts';
import { declaredFileWords, type DeclaredPlanRow } from '#ui/declared/declared-file-words.ts';
import ChooseFile from '#ui/import/ChooseFile.svelte';
import ImportPreview from '#ui/import/ImportPreview.svelte';
import { cellFaultWords } from '#ui/import/import-words.ts';
import { rosterWords } from '#ui/roster/roster-words.ts';

const words = declaredFileWords([{ id: 'base', title: { en: 'Base of wall', es: 'Base' } }]);
const sound: DeclaredPlanRow = {
  row: 2,
  name: 'Ana López: Working at height',
  state: 'new',
  faults: [],
  given: {
    title: 'Working at height',
    issuer: 'Harrow County Trades',
    number: 'HT-204',
    scheme: 'base',
    issuedOn: '2029-03-01',
    validUntil: null,
  },
};
const faulty: DeclaredPlanRow = {
  row: 3,
  name: 'Nobody: First aid',
  state: 'faulty',
  given: null,
  faults: [
    { column: 'person', code: 'UNKNOWN', text: 'Nobody' },
    { column: 'issuedOn', code: 'NOT_A_DAY', text: '<b>3/1</b>' },
  ],
};
const planOf = (...rows: readonly DeclaredPlanRow[]) => ({ rows, ignored: ['shoe'], digest: 'd' });
const shown = (...rows: readonly DeclaredPlanRow[]) =>
  render(ImportPreview, {
    plan: planOf(...rows),
    text: 'as sent',
    fileName: 'elsewhere.csv',
    words: words as never,
  });

describe('before a file is written', () => {
  test('every row is told by its state, with what it would write down', () => {
    shown(sound);
    const row = screen.getByText('Ana López: Working at height').closest('li')!;
    expect(row).toHaveTextContent(/Row 2.*new/);
    expect(row).toHaveTextContent('issued by Harrow County Trades, number HT-204');
    expect(row).toHaveTextContent('comes nearest to Base of wall');
    expect(screen.getByText('Columns that are not read: shoe')).toBeVisible();
    expect(screen.queryByRole('checkbox')).toBeNull();
    expect(screen.getByRole('button', { name: 'Write it' })).toBeVisible();
    expect(screen.queryByText('Changed')).toBeNull();
  });

  test('every fault of a row stands at it, and writing asks to leave the row out', () => {
    shown(sound, faulty);
    const row = screen.getByText('Nobody: First aid').closest('li')!;
    const [who, day] = within(row).getAllByRole('listitem');
    expect(who).toHaveTextContent('Person: Nobody in the company is known by “Nobody”.');
    expect(day).toHaveTextContent('Issued on: “<b>3/1</b>” is no day.');
    expect(screen.getByRole('alert')).toHaveTextContent('Nothing can be written');
    expect(screen.getByRole('checkbox', { name: /Leave the faulty rows out/ })).toBeRequired();
  });

  test('where no row is sound nothing can be written, and where all is there nothing need be', async () => {
    const { rerender } = shown(faulty);
    expect(screen.queryByRole('button', { name: 'Write it' })).toBeNull();
    await rerender({ plan: planOf({ ...sound, state: 'unchanged' }) });
    expect(screen.getByRole('status')).toHaveTextContent('This file changes nothing');
    expect(screen.queryByRole('button', { name: 'Write it' })).toBeNull();
  });
});

test('rows that were pasted stand open to be mended, and no field is filled else', () => {
  const field = words.field;
  const { unmount } = render(ChooseFile, { label: 'File', mostRows: 1, field, pasted: 'person' });
  expect(screen.getByRole('textbox', { name: 'Rows' })).toHaveValue('person');
  unmount();
  render(ChooseFile, { label: 'File', mostRows: 1, field });
  expect(screen.getByRole('textbox', { name: 'Rows', hidden: true })).toHaveValue('');
  expect(screen.getByText('Or paste the rows here').closest('details')).not.toHaveAttribute('open');
});

describe('a file that cannot be read', () => {
  const faults: readonly (readonly [FileFault, string])[] = [
    [{ code: 'MISSING' }, 'Choose a file or paste the rows first.'],
    [{ code: 'TWO_SOURCES' }, 'not both'],
    [{ code: 'EMPTY' }, 'no rows below its headings'],
    [{ code: 'TOO_LARGE', most: 1 }, 'larger than 1 MB'],
    [{ code: 'TOO_MANY_ROWS', most: 10_000 }, 'more than 10000 rows'],
    [{ code: 'WORKBOOK' }, 'workbook'],
    [{ code: 'NOT_UTF8', line: 3, reads: 'López' }, 'Line 3 probably means: López'],
    [
      { code: 'COLUMN_MISSING', column: 'issuer', found: ['a', 'b'] },
      '“Issuer”. The first row says: a | b',
    ],
    [{ code: 'COLUMN_TWICE', column: 'title' }, 'headed as Certificate'],
    [{ code: 'QUOTE_OPEN', row: 4 }, 'In row 4 a quotation mark opens'],
  ];
  test.each(faults)('%j is said at the field', (fault, said) => {
    render(ChooseFile, { label: 'File', mostRows: 10_000, field: words.field, fault });
    expect(screen.getByLabelText('File')).toBeInvalid();
    expect(screen.getByRole('alert')).toHaveTextContent(said);
  });
});

test('every code of a cell has words, of either kind of file', () => {
  const shared = ['MISSING', 'WRONG', 'MISREAD', 'TOO_MANY_CELLS', 'TWICE', 'AMBIGUOUS'];
  const said = (kind: Parameters<typeof cellFaultWords>[1], code: string) => {
    const fault = { column: 'number', code, text: 'x', meant: 'y', row: 2 } as CellFault;
    return cellFaultWords(fault, kind);
  };
  for (const code of [...shared, 'ROLE_UNKNOWN', 'LAST_OFFICE']) {
    expect(said(rosterWords as never, code)).not.toContain(code);
  }
  const own = ['UNKNOWN', 'CONTRADICTED', 'KEPT_OTHERWISE', 'UNKNOWN_SCHEME', 'NOT_A_DAY'];
  for (const code of [...shared, ...own, 'AHEAD', 'BEFORE_ISSUE']) {
    expect(said(words as never, code)).not.toContain(code);
  }
});
