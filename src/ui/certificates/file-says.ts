/** What stands in a credential file, as a person reads it. */
import { isFields } from '#engine/fields.ts';

export type FileSays = {
  readonly holder: string;
  readonly title: string;
  readonly purpose: string;
  readonly issuer: string;
  /** Days of UTC, the last one included. */
  readonly from: string;
  readonly until: string;
  readonly passed: readonly string[];
  /** Where its state is told. */
  readonly address: string;
};

type Fields = Readonly<Record<string, unknown>>;

const fieldsOf = (value: unknown): Fields => (isFields(value) ? value : {});
const textOf = (value: unknown): string => (typeof value === 'string' ? value : '');
const listOf = (value: unknown): readonly unknown[] => (Array.isArray(value) ? value : []);

/** The name that a credential was made for. */
export function holderIn(credential: Fields): string {
  const { identifier } = fieldsOf(credential['credentialSubject']);
  return textOf(fieldsOf(listOf(identifier)[0])['identityHash']);
}

/** Of a credential whose signature was found right. */
export const fileSays = (credential: Fields): FileSays => ({
  holder: holderIn(credential),
  title: textOf(credential['name']),
  purpose: textOf(credential['description']),
  issuer: textOf(fieldsOf(credential['issuer'])['name']),
  from: textOf(credential['validFrom']),
  until: textOf(credential['validUntil']),
  passed: listOf(credential['evidence']).map((one) => {
    const { name, narrative } = fieldsOf(one);
    return [name, narrative].map(textOf).filter(Boolean).join(': ');
  }),
  address: textOf(credential['id']).replace(/#.*/s, ''),
});
