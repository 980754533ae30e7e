import type { PartId, Renewal, Scheme, SchemeId, Separation, Tries } from '#engine/exam/scheme.ts';
import type { MethodId, SourceId } from '#engine/method/method.ts';
import { entries, record } from '#engine/compile/group.ts';
import { atLeastOne, list } from '#engine/compile/list.ts';
import { mapped, optional, type Reader } from '#engine/compile/reader.ts';
import { when } from '#engine/compile/site.ts';
import { idOf, text } from '#engine/compile/words.ts';
import { blueprint, parts } from './part.ts';
import { period } from './period.ts';
import { count } from './share.ts';

const tries: Reader<Tries> = record({ most: count, within: period, wait: period });

const renewal: Reader<Renewal> = mapped(
  record({
    opens: period,
    closes: optional(period, undefined),
    parts: atLeastOne(
      entries(record({ blueprint: optional(blueprint, undefined) }), 'a group of parts'),
      'part',
    ),
  }),
  ({ parts: named, ...rest }) => ({
    ...rest,
    parts: named.map(([id, value]) => ({ part: id as PartId, ...value })),
  }),
);

const separation: Reader<Separation> = mapped(
  record({
    'trainer-examines-after': period,
    'trainer-decides-after': period,
    'examiner-decides-after': period,
  }),
  (found) => ({
    trainedExamines: found['trainer-examines-after'],
    trainedDecides: found['trainer-decides-after'],
    examinedDecides: found['examiner-decides-after'],
  }),
);

const written = record({
  title: text,
  purpose: text,
  note: text,
  covers: mapped(
    atLeastOne(entries(when, 'methods, each with the site values that it covers'), 'method'),
    (found) => new Map(found.map(([id, condition]) => [id as MethodId, condition])),
  ),
  requires: optional(list(idOf<SchemeId>('scheme'), 'schemes'), []),
  parts,
  keeps: period,
  tries,
  validity: period,
  renewal,
  separation,
  appeal: period,
  source: idOf<SourceId>('source'),
});

export const scheme = (id: SchemeId): Reader<Scheme> =>
  mapped(written, (value) => ({ id, ...value }));
