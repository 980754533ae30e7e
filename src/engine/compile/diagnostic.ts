/** Every fault that content can have; `content/README.md` has a row for each. Never reused. */
export const diagnosticCodes = [
  // The file itself
  'YAML_SYNTAX',
  'UNKNOWN_FILE',
  'MISPLACED_FILE',
  'MISSING_FILE',
  // Its form
  'WRONG_SHAPE',
  'MISSING_KEY',
  'UNKNOWN_KEY',
  'DUPLICATE_KEY',
  'MISSING_TEXT',
  'BAD_ID',
  // Words from a closed list
  'UNKNOWN_SEVERITY',
  'UNKNOWN_LAYER',
  'UNKNOWN_ZONE',
  'UNKNOWN_MEASURE',
  'UNKNOWN_ASSEMBLY',
  'UNKNOWN_CONDITION',
  'UNKNOWN_FAILURE',
  'UNKNOWN_UNDO',
  'UNKNOWN_READING',
  'UNKNOWN_TOPIC',
  'UNKNOWN_PICTURE',
  'UNKNOWN_TAKE',
  'UNKNOWN_PART_KIND',
  'UNKNOWN_OUTCOME',
  'UNKNOWN_DIFFICULTY',
  'UNKNOWN_UNIT',
  // Numbers
  'BAD_QUANTITY',
  'UNIT_MISMATCH',
  'EMPTY_RANGE',
  'UNSORTED_ROWS',
  'UNSORTED_VALUES',
  'NO_RULE',
  'TWO_RULES',
  'WRONG_AIM',
  'NO_RIGHT_ENTRY',
  'UNCITED_NUMBER',
  'CIRCULAR_SHEETS',
  // What one entry says of another
  'UNKNOWN_SOURCE',
  'UNKNOWN_HAZARD',
  'UNKNOWN_TERM',
  'UNKNOWN_DATA_SHEET',
  'UNKNOWN_NUMBER',
  'UNKNOWN_METHOD',
  'UNKNOWN_SITE_QUESTION',
  'UNKNOWN_SITE_VALUE',
  'UNKNOWN_STEP',
  'UNKNOWN_SETTING',
  'UNKNOWN_DECOY',
  'UNKNOWN_PLACE',
  'UNKNOWN_FAMILY',
  'UNKNOWN_SCHEME',
  'UNKNOWN_PART',
  'UNKNOWN_QUESTION',
  // Waits and settings
  'WAIT_NOT_TIME',
  'UNSTATED_CONDITION',
  'NO_ENTRY',
  'DEW_ON_SITE',
  // The order of the work
  'TOO_MANY_SITES',
  'STEP_BEFORE_ITSELF',
  'REPEATED_CONSTRAINT',
  'UNREACHABLE_STEP',
  'NEVER_TOGETHER',
  'CIRCULAR_ORDER',
  'WRITTEN_OUT_OF_ORDER',
  // Where water can be
  'NO_WET_PLACE',
  'TWO_WET_PLACES',
  'NO_DRY_PLACE',
  'JOINT_TO_ITSELF',
  'UNCONNECTED_PLACE',
  // Formulas
  'FORMULA_SYNTAX',
  'FORMULA_TOO_COSTLY',
  'UNKNOWN_FUNCTION',
  'WRONG_ARGUMENTS',
  'UNKNOWN_NAME',
  // Computed problems
  'NO_ORIGIN',
  'TWO_ORIGINS',
  'UNUSED_GIVEN',
  'UNEQUAL_NAMES',
  'NO_INSTANCE',
  'SLIP_IS_RIGHT',
  // Certification schemes
  'BAD_PERIOD',
  'SHARE_OUT_OF_RANGE',
  'NOT_COVERED',
  'ASKS_TOO_MUCH',
  'CIRCULAR_SCHEMES',
  // Written questions
  'NO_KIND',
  'TWO_KINDS',
  'QUESTION_TWICE',
  'CHOICE_COUNT',
  'CHOICE_TWICE',
  'RIGHT_AMONG_WRONG',
  'FAULT_UNSEEN',
] as const;

export type DiagnosticCode = (typeof diagnosticCodes)[number];

/** One fault: what it is, where it stands, and how to mend it. */
export type Diagnostic = {
  readonly code: DiagnosticCode;
  readonly file: string;
  /** From 1, as is the column, which counts UTF-16 units. */
  readonly line: number;
  readonly column: number;
  /** How much of the source line is meant; at least 1. */
  readonly length: number;
  readonly sourceLine: string;
  readonly message: string;
  readonly cure: string;
};

/** In the order in which a person reads: by file, then from top to bottom. */
export const inReadingOrder = (a: Diagnostic, b: Diagnostic): number =>
  compareTexts(a.file, b.file) || a.line - b.line || a.column - b.column;

const compareTexts = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);
