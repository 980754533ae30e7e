import type { HandJob } from './job.ts';

export const conditionsAndCost: readonly HandJob[] = [
  // 5 °F above the dew point: MIL-HDBK-1110, 9.6.6. No colder than 40 °F: UFGS 07920.
  {
    family: 'dew-point',
    givens: { air: '70 °F', 'dew-point': '57 °F', surface: '61 °F' },
    answers: { least: '62 °F', go: false },
  },
  {
    family: 'dew-point',
    givens: { air: '70 °F', 'dew-point': '57 °F', surface: '62 °F' },
    answers: { least: '62 °F', go: true },
  },
  {
    family: 'dew-point',
    givens: { air: '44 °F', 'dew-point': '33 °F', surface: '39 °F' },
    // Warm enough for the dew point, too cold to work on.
    answers: { least: '38 °F', go: false },
  },
  // 24 h at 60 to 80 °F: common practice, as on the shipped data sheet.
  {
    family: 'warm-storage',
    givens: { stored: '10 h', later: '15 h', storage: '57 °F' },
    answers: { wait: '14 h', go: false },
  },
  {
    family: 'warm-storage',
    givens: { stored: '10 h', later: '13 h', storage: '68 °F' },
    answers: { wait: '14 h', go: false },
  },
  {
    family: 'warm-storage',
    givens: { stored: '10 h', later: '14 h', storage: '80 °F' },
    answers: { wait: '14 h', go: true },
  },
  {
    family: 'warm-storage',
    givens: { stored: '10 h', later: '15 h', storage: '81 °F' },
    answers: { wait: '14 h', go: false },
  },
  {
    // The chart is the shipped one, common practice: 6 min at 40 °F, 4 min at 50 °F, half as long again at 85 %.
    family: 'time-on-the-wall',
    givens: {
      air: '65 °F',
      surface: '45 °F',
      humidity: '85 %',
      prime: '25 min',
      hang: '40 min',
      finish: '30 min',
    },
    answers: {
      // Half-way between the rows 5 min, and 2 1/2 more: 7 1/2.
      drying: '8 min',
      // From 0: primed at 25, dry at 33, hung at 73, finished at 103.
      total: '103 min',
    },
  },
  {
    family: 'time-on-the-wall',
    givens: {
      air: '60 °F',
      surface: '50 °F',
      humidity: '50 %',
      prime: '25 1/2 min',
      hang: '40 min',
      finish: '30 min',
    },
    // A row of the chart, below the first humidity of it: 4 min. 25 1/2, 29 1/2, 69 1/2, 99 1/2.
    answers: { drying: '4 min', total: '100 min' },
  },
  {
    // Common practice: whole rolls and cans are paid for, tax on all of it.
    family: 'cost-of-take-off',
    givens: {
      length: '560 ft',
      area: '720 ft2',
      'roll-price': '$118.50',
      'can-price': '$46.25',
      tax: '6 %',
    },
    answers: {
      // 560 + 56 = 616 ft: twelve rolls are 600.
      rolls: '13',
      // 720 + 72 = 792 ft²: three cans cover 750.
      cans: '4',
      // 13 x 118.50: 1185.00 + 355.50 = 1540.50; 4 x 46.25 = 185.00.
      material: '$1725.50',
      // 6 % of it: 103.53.
      total: '$1829.03',
    },
  },
];
