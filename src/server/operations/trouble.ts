/** Something that an operation cannot do as things are; the message says what and how to mend it. */
export class OperationTrouble extends Error {
  override readonly name = 'OperationTrouble';
}
