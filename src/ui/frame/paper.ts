/**
 * Light or dark paper: what the device prefers until a person chooses. The choice is set on the page
 * before it is drawn by a script in `src/app.html`; the words of the switch follow by style sheet, so that a
 * page from the server needs no correction.
 */
export type Paper = 'light' | 'dark';

export const paper = {
  get current(): Paper {
    const chosen = document.documentElement.dataset['paper'];
    if (chosen === 'light' || chosen === 'dark') return chosen;
    return matchMedia('(prefers-color-scheme: dark)').matches ? 'dark' : 'light';
  },

  choose(next: Paper): void {
    document.documentElement.dataset['paper'] = next;
    // The browser's own bars follow.
    for (const meta of document.querySelectorAll<HTMLMetaElement>('meta[data-of]')) {
      meta.media = meta.dataset['of'] === next ? 'all' : 'not all';
    }
    try {
      localStorage.setItem('paper', next);
    } catch {
      // A browser that keeps nothing still shows the paper that was chosen.
    }
  },
};
