import type { Family } from '#engine/takeoff/family.ts';
import { fieldFaults, jobFields, workJob, type JobField } from '#engine/takeoff/job.ts';
import type { JobFault } from '#engine/takeoff/job-entry.ts';
import type { JobSheet } from '#engine/takeoff/job-sheet.ts';
import type { Takeoff } from '#engine/takeoff/takeoff.ts';
import type { Store } from '#ui/attempts/browser-store.ts';

const drawer = 'job';

/** The last job of this browser: its take-offs, its name and what was entered, by field. */
type KeptJob = {
  readonly families: readonly string[];
  readonly name: string;
  readonly entries: Readonly<Record<string, string>>;
};

const longestName = 80;

/** What a browser kept may be of another making: only what is right of it counts. */
function keptJob(store: Store): KeptJob {
  const found = store.read(drawer);
  const { families, name, entries } = (
    typeof found === 'object' && found !== null ? found : {}
  ) as Readonly<Record<string, unknown>>;
  const isText = (value: unknown): value is string => typeof value === 'string';
  return {
    families: Array.isArray(families) ? families.filter(isText) : [],
    name: isText(name) ? name.slice(0, longestName) : '',
    entries:
      typeof entries === 'object' && entries !== null
        ? Object.fromEntries(Object.entries(entries).filter(([, text]) => isText(text)))
        : {},
  };
}

/** The take-offs of the job that this browser had last; none at first. */
export const lastFamilies = (store: Store): readonly string[] => keptJob(store).families;

/** The dimensions of a real job while they are entered, kept at every change. */
export class JobEntries {
  readonly takeoffs: readonly Takeoff[];
  readonly fields: readonly JobField[];
  name = $state('');
  entries = $state<Record<string, string>>({});
  /** Somebody asked for the list: from then on every fault shows. */
  isAsked = $state(false);
  readonly #store: Store;

  constructor(takeoffs: readonly Takeoff[], store: Store) {
    this.takeoffs = takeoffs;
    this.fields = jobFields(takeoffs.map(({ family }): Family => family));
    this.#store = store;
  }

  readonly parts = $derived.by(() => workJob(this.takeoffs, this.entries));
  readonly sheets: readonly JobSheet[] = $derived.by(() =>
    this.parts.flatMap(({ sheet }) => (sheet.ok ? [sheet.value] : [])),
  );
  readonly #faults = $derived.by(() => fieldFaults(this.parts));

  /** What is wrong at a field. Nothing was entered counts once the list was asked for. */
  faultAt(key: string): JobFault | undefined {
    const here = this.#faults.filter((each) => each.key === key).map(({ fault }) => fault);
    const worst = here.find(({ code }) => code !== 'NEED') ?? here[0];
    return worst?.code === 'MISSING' && !this.isAsked ? undefined : worst;
  }

  get isRight(): boolean {
    return this.#faults.length === 0;
  }

  recall(): void {
    const kept = keptJob(this.#store);
    this.name = kept.name;
    this.entries = { ...kept.entries };
  }

  /** Whether the browser will still have it tomorrow. */
  keep(): boolean {
    return this.#store.write(drawer, {
      families: this.takeoffs.map(({ family }) => family.id),
      name: this.name,
      entries: this.entries,
    } satisfies KeptJob);
  }

  /** For another job: the take-offs stay, what was entered goes. */
  clear(): void {
    this.entries = Object.fromEntries(
      Object.entries(this.entries).filter(
        ([key]) => !this.fields.some((field) => field.key === key),
      ),
    );
    this.name = '';
    this.isAsked = false;
  }
}
