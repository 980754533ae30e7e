import { z } from 'zod';
import { fault, ok } from '#engine/result.ts';
import * as assignmentList from '../../assignments/assignment-list.ts';
import * as those from '../../assignments/those-given.ts';
import type { Subject } from '../../attempts/work.ts';
import { after, endpoint, id, instant, pageOf } from '../endpoint.ts';
import { knownPerson } from '../known.ts';

const shared = {
  id,
  title: z.string(),
  opensAt: instant,
  dueAt: instant.nullable(),
  withdrawnAt: instant.nullable(),
};

const listed = z
  .strictObject({ ...shared, works: z.int().min(0).describe('Of how many pieces it is.') })
  .meta({ id: 'AssignmentLine' });

export const assignments = endpoint({
  id: 'listAssignments',
  route: '/api/assignments',
  method: 'GET',
  scope: 'assignments.read',
  summary: 'Assigned work, the newest first, thirty at a time.',
  query: z.strictObject({
    when: z
      .enum(['current', 'past'])
      .default('current')
      .describe('`past`: withdrawn, or due before now.'),
    after,
  }),
  answer: pageOf(listed),
  async reply({ db, bearer: { company }, at }, { query }) {
    if (query.after && !(await assignmentList.one(db, company, query.after))) {
      return fault({ code: 'CURSOR_UNKNOWN' });
    }
    const { when } = query;
    const asked = { when, at, ...(query.after ? { after: query.after } : {}) };
    const page = await assignmentList.list(db, company, asked);
    const items = page.assignments.map(({ opens, due, withdrawn, to: _, ...row }) => ({
      ...row,
      opensAt: opens,
      dueAt: due,
      withdrawnAt: withdrawn,
    }));
    return ok({ items, next: page.next ?? null });
  },
});

const work = z.strictObject({
  id,
  kind: z.enum(['mockup', 'takeoff', 'written']),
  about: z.string().describe('The method, the family of problems or the topic.'),
  count: z.int().min(1).describe('Passed with so many tries …'),
  pass: z.number().min(0).max(100).describe('… of so many points of 100 or more.'),
});

const whole = z
  .strictObject({
    ...shared,
    tries: z.int().min(1).nullable().describe('How many are allowed; null for any number.'),
    works: z.array(work),
    crews: z.array(id).describe('Whom it is for.'),
    people: z.array(id).describe('Whom it is for beside those crews.'),
  })
  .meta({ id: 'Assignment' });

const path = z.strictObject({ assignment: id });

const aboutOf = (subject: Subject): string =>
  subject.kind === 'mockup'
    ? subject.method
    : subject.kind === 'takeoff'
      ? subject.family
      : subject.topic;

export const assignment = endpoint({
  id: 'readAssignment',
  route: '/api/assignments/[assignment]',
  method: 'GET',
  scope: 'assignments.read',
  summary: 'One assignment, with its pieces and whom it is for.',
  path,
  answer: whole,
  async reply({ db, bearer: { company } }, { path: asked }) {
    const found = await assignmentList.one(db, company, asked.assignment);
    if (!found) return fault({ code: 'ABSENT' });
    return ok({
      id: found.id,
      title: found.title,
      opensAt: found.opens,
      dueAt: found.due,
      withdrawnAt: found.withdrawn,
      tries: found.tries,
      works: found.works.map(({ subject, ...row }) => ({
        ...row,
        kind: subject.kind,
        about: aboutOf(subject),
      })),
      crews: found.crews.map((crew) => crew.id),
      people: found.persons.map((person) => person.id),
    });
  },
});

const progress = z
  .strictObject({
    person: id,
    state: z.enum(those.states),
    isLate: z.boolean(),
    tries: z.int().min(0),
    passed: z.int().min(0).describe('Of its pieces.'),
    lastAt: instant.nullable(),
  })
  .meta({ id: 'Progress' });

export const standings = endpoint({
  id: 'listStandings',
  route: '/api/assignments/[assignment]/standings',
  method: 'GET',
  scope: 'assignments.read',
  summary: 'How far each person is with an assignment, by name, fifty at a time.',
  path,
  query: z.strictObject({
    only: z.enum(those.filters).optional().describe('In this state alone.'),
    after,
  }),
  answer: pageOf(progress),
  async reply({ db, bearer: { company }, at }, { path: asked, query }) {
    const about = await assignmentList.one(db, company, asked.assignment);
    if (!about) return fault({ code: 'ABSENT' });
    const known = await knownPerson(db, company, query.after);
    if (!known.ok) return known;
    const { only, after: from } = query;
    const wanted = { at, ...(only ? { only } : {}), ...(from ? { after: from } : {}) };
    const page = await those.page(db, company, about, wanted);
    const items = page.people.map(({ name: _, crewName: __, ...row }) => row);
    return ok({ items, next: page.next ?? null });
  },
});
