import type { CrewChoices } from '#engine/record/crew-choices.ts';

/** Crews of a name, as the server finds them; none where it cannot be asked. */
export async function crewsFound(
  company: string,
  search: string,
): Promise<CrewChoices | undefined> {
  const query = new URLSearchParams({ 'crew-search': search });
  try {
    const answer = await fetch(`/company/${company}/crews/found?${query}`);
    return answer.ok ? ((await answer.json()) as CrewChoices) : undefined;
  } catch {
    return undefined;
  }
}
