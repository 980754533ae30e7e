import type { AskedPart } from '#engine/takeoff/asked.ts';
import type { WrittenPart } from '#engine/takeoff/problem-answer.ts';
import { echo, pickableUnits, readAnswer } from '#engine/takeoff/read-answer.ts';
import type { Style } from '#engine/takeoff/style.ts';
import type { Text } from '#engine/text.ts';
import { ofDifferentUnits } from '#ui/takeoff/writing.ts';

/** One part of a problem of an examination while it is answered: read as it is written, and never judged. */
export class AskedAnswer {
  readonly asked: AskedPart;
  readonly units: readonly Style[];
  text = $state('');
  picked = $state<Style>();
  /** Nothing is refused here: what cannot be read is kept as it stands. */
  unread: Text | undefined = undefined;

  constructor(asked: AskedPart, given: WrittenPart | undefined) {
    this.asked = asked;
    this.units = ofDifferentUnits(pickableUnits(asked));
    this.text = given?.text ?? '';
    this.picked = this.units.find((unit) => unit === given?.picked) ?? this.units[0];
  }

  get kind() {
    return this.asked.term.kind;
  }

  readonly echo: Text | undefined = $derived.by(() => {
    if (this.text.trim() === '') return undefined;
    const read = readAnswer(this.asked, this.text, this.picked);
    return read.ok ? echo(this.asked, read.value) : undefined;
  });

  get written(): WrittenPart {
    const { text, picked } = this;
    return { part: this.asked.part, text, ...(picked === undefined ? {} : { picked }) };
  }
}
