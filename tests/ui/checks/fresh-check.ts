/** A check that nobody filled anything in yet, as a device keeps it. */
export const freshCheck = {
  id: 'a-check',
  company: 'a-company',
  candidateName: 'Ana',
  begunAt: '2030-05-01T07:30:00.000Z',
  signedAt: null,
  isOver: false,
  sheet: {},
  savedSheet: '{}',
};
