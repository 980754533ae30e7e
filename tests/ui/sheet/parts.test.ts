import { render, screen, within } from '@testing-library/svelte';
import userEvent from '@testing-library/user-event';
import { createRawSnippet } from 'svelte';
import { describe, expect, test, vi } from 'vitest';
import { severities } from '#engine/severity.ts';
import Choice from '#ui/sheet/Choice.svelte';
import ErrorNote from '#ui/sheet/ErrorNote.svelte';
import Field from '#ui/sheet/Field.svelte';
import SeverityMark from '#ui/sheet/SeverityMark.svelte';
import TitleBlock from '#ui/sheet/TitleBlock.svelte';

describe('truth', () => {
  test('a title block is headed by the title and files it by its cells', () => {
    render(TitleBlock, { title: 'Base of wall', cells: [{ name: 'Revision', value: 'c20d40ff' }] });
    expect(screen.getByRole('heading', { level: 1 })).toHaveTextContent('Base of wall');
    expect(screen.getByRole('term')).toHaveTextContent('Revision');
    expect(screen.getByRole('definition')).toHaveTextContent('c20d40ff');
  });

  test('every severity is told by a word', () => {
    const words = severities.map((severity) => {
      const { container, unmount } = render(SeverityMark, { severity });
      const word = container.textContent.trim();
      unmount();
      return word;
    });
    expect(words).toEqual(['Minor', 'Major', 'Critical']);
  });

  test('a choice is a group of radio buttons that answers to the arrow keys', async () => {
    const onchoose = vi.fn();
    render(Choice, {
      question: 'Backing',
      name: 'backing',
      value: 'steel-stud',
      onchoose,
      options: [
        { value: 'steel-stud', label: 'Steel stud' },
        { value: 'concrete-masonry', label: 'Concrete masonry' },
      ],
    });
    const group = screen.getByRole('group', { name: 'Backing' });
    expect(within(group).getByRole('radio', { name: 'Steel stud' })).toBeChecked();

    await userEvent.tab();
    await userEvent.keyboard('{ArrowDown}');

    expect(within(group).getByRole('radio', { name: 'Concrete masonry' })).toBeChecked();
    expect(onchoose).toHaveBeenCalledWith('concrete-masonry');
  });

  test('a field names its control, describes it, and says what is wrong with it', () => {
    render(Field, {
      label: 'Turn-up',
      hint: 'From the transition',
      wrong: 'Write a length such as 8 in',
      control: createRawSnippet<
        [{ id: string; 'aria-describedby': string | undefined; 'aria-invalid': 'true' | undefined }]
      >((attributes) => ({
        render: () => {
          const input = document.createElement('input');
          for (const [name, value] of Object.entries(attributes())) {
            if (value !== undefined) input.setAttribute(name, value);
          }
          return input.outerHTML;
        },
      })),
    });
    const input = screen.getByRole('textbox', { name: 'Turn-up' });
    expect(input).toBeInvalid();
    expect(input).toHaveAccessibleDescription('From the transition Write a length such as 8 in');
    expect(screen.getByRole('alert')).toHaveTextContent('Write a length such as 8 in');
  });

  test('an error note says what happened and how to go on, and is announced', () => {
    render(ErrorNote, { title: 'No such sheet', cure: 'Go back to the list.' });
    expect(screen.getByRole('alert')).toHaveTextContent('No such sheet Go back to the list.');
  });
});
