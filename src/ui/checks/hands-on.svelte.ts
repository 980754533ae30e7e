/**
 * A check as it is filled in at the wall. Every change is kept on the device at once and sent when there is
 * signal; what comes back is merged line by line, so that nothing filled in elsewhere is lost either.
 */
import { checkedSequence, type CheckBundle } from '#engine/compile/check-bundle.ts';
import { merged, photoLine, photosIn, withLine } from '#engine/exam/check-sheet.ts';
import { judgedSheet, pointsUnder } from '#engine/exam/judged-sheet.ts';
import { freshAttemptId } from '#ui/attempts/attempt-id.ts';
import type { Store } from '#ui/attempts/browser-store.ts';
import { instantNow, keepCheck, type KeptCheck } from './kept-check.ts';
import { dropPhoto, photosOf, putPhoto } from './photo-drawer.ts';
import { smallerPhoto } from './smaller-photo.ts';

/** `signal`: none. `sign-in`: not signed in, or as somebody else. `server`: it does not take it just now. */
export type Trouble = 'signal' | 'sign-in' | 'server';

export type SignFault = {
  readonly code: string;
  readonly seconds?: number;
  readonly points?: readonly string[];
  readonly line?: string;
};

export type Signed = { readonly outcome: string; readonly taking?: string };

const quiet = 1200;
const patience = 60_000;

export class HandsOn {
  kept = $state.raw() as KeptCheck;
  trouble = $state<Trouble>();
  isSaving = $state(false);
  /** Whether what was filled in will be here when the page is opened again. */
  isKept = $state(true);
  /** Addresses of the photos that are on this device alone, by their ids. */
  unsent = $state.raw<Readonly<Record<string, string>>>({});
  readonly bundle: CheckBundle;
  readonly #sequence;
  readonly #store: Store;
  #timer: ReturnType<typeof setTimeout> | undefined;

  constructor(store: Store, kept: KeptCheck, bundle: CheckBundle) {
    this.#store = store;
    this.kept = kept;
    this.bundle = bundle;
    this.#sequence = checkedSequence(bundle);
  }

  readonly points = $derived.by(() => pointsUnder(this.#sequence, this.kept.sheet));
  readonly judged = $derived.by(() => {
    const { part } = this.bundle;
    return judgedSheet(this.#sequence, part.passMark, this.kept.sheet);
  });
  readonly isAllSaved = $derived.by(
    () =>
      JSON.stringify(this.kept.sheet) === this.kept.savedSheet &&
      Object.keys(this.unsent).length === 0,
  );

  get steps() {
    return this.#sequence.steps;
  }

  says(line: string): string {
    return this.kept.sheet[line]?.says ?? '';
  }

  set(line: string, says: string): void {
    const next = says === '' ? null : says;
    if ((this.kept.sheet[line]?.says ?? null) === next) return;
    this.#keep({ sheet: withLine(this.kept.sheet, line, next, Date.now()) });
    this.#saveSoon();
  }

  /** Takes up what waits here from before, and sends it. */
  async recall(): Promise<void> {
    const rows = await photosOf(this.kept.id);
    this.unsent = Object.fromEntries(rows.map(({ id, blob }) => [id, URL.createObjectURL(blob)]));
    await this.save();
  }

  /** False for a file that is no picture, or where the device keeps nothing. */
  async addPhoto(file: Blob, point: string): Promise<boolean> {
    const blob = await smallerPhoto(file);
    if (!blob) return false;
    const id = freshAttemptId();
    try {
      await putPhoto({ id, check: this.kept.id, blob });
    } catch {
      return false;
    }
    this.unsent = { ...this.unsent, [id]: URL.createObjectURL(blob) };
    this.#keep({ sheet: withLine(this.kept.sheet, photoLine(id), point, Date.now()) });
    void this.save();
    return true;
  }

  async takeBackPhoto(id: string): Promise<void> {
    this.set(photoLine(id), '');
    await dropPhoto(id);
    this.#forgetPhoto(id);
  }

  photosAt(point: string): readonly string[] {
    return photosIn(this.kept.sheet).flatMap((one) => (one.point === point ? [one.id] : []));
  }

  addressOf(photo: string): string {
    return this.unsent[photo] ?? `${this.#address}/photos/${photo}`;
  }

  /** Sends what is new: the sheet, and then the photos. Never throws. */
  async save(): Promise<void> {
    if (this.isSaving || this.kept.signedAt !== null || this.isAllSaved) return;
    this.isSaving = true;
    const sent = this.kept.sheet;
    const answer = await this.#ask('', { sheet: sent });
    const saved = answer?.ok ? ((await answer.json()) as { sheet: KeptCheck['sheet'] }) : undefined;
    this.trouble = troubleIn(answer);
    if (saved) {
      const isSame = this.kept.sheet === sent;
      const sheet = isSame ? saved.sheet : merged(saved.sheet, this.kept.sheet);
      this.#keep({ sheet, savedSheet: JSON.stringify(saved.sheet) });
      await this.#sendPhotos();
    }
    this.isSaving = false;
    // Something was filled in while it was under way.
    if (!this.trouble && !this.isAllSaved) this.#saveSoon();
  }

  #saveSoon(): void {
    clearTimeout(this.#timer);
    this.#timer = setTimeout(() => void this.save(), quiet);
  }

  /** Undefined where no answer came. */
  async sign(
    password: string,
    brokenOff: string | undefined,
  ): Promise<Signed | readonly SignFault[] | undefined> {
    await this.#sendPhotos();
    const answer = await this.#ask('/sign', { sheet: this.kept.sheet, password, brokenOff });
    const said: unknown = await answer?.json().catch(() => undefined);
    this.trouble = answer?.status === 400 ? undefined : troubleIn(answer);
    if (answer?.status === 400) return (said as { faults: readonly SignFault[] }).faults;
    if (!answer?.ok) return undefined;
    this.#keep({ signedAt: instantNow() });
    return said as Signed;
  }

  get #address(): string {
    return `/company/${this.kept.company}/checks/${this.kept.id}`;
  }

  #keep(change: Partial<KeptCheck>): void {
    this.kept = { ...this.kept, ...change };
    this.isKept = keepCheck(this.#store, this.kept);
  }

  async #sendPhotos(): Promise<void> {
    for (const { id, blob } of await photosOf(this.kept.id)) {
      const headers = { 'content-type': blob.type };
      const how = { method: 'POST', headers, body: blob, signal: AbortSignal.timeout(patience) };
      const answer = await fetch(`${this.#address}/photos/${id}`, how).catch(() => undefined);
      this.trouble = troubleIn(answer);
      if (!answer?.ok) return;
      await dropPhoto(id);
      this.#forgetPhoto(id);
    }
  }

  #forgetPhoto(id: string): void {
    const { [id]: _gone, ...rest } = this.unsent;
    this.unsent = rest;
  }

  #ask(path: string, body: object): Promise<Response | undefined> {
    return fetch(this.#address + path, {
      method: 'POST',
      headers: { 'content-type': 'application/json', accept: 'application/json' },
      body: JSON.stringify(body),
      signal: AbortSignal.timeout(patience),
    }).catch(() => undefined);
  }
}

function troubleIn(answer: Response | undefined): Trouble | undefined {
  if (!answer) return 'signal';
  if ([401, 403, 404].includes(answer.status)) return 'sign-in';
  return answer.ok ? undefined : 'server';
}
