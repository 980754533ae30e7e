/**
 * What somebody did, in the form of the Experience API (xAPI 1.0.3, https://github.com/adlnet/xAPI-Spec),
 * for whoever keeps such records. People are named by an account and not by name or email. A statement is
 * never changed: the same deed has the same id for ever.
 */
import type { Text } from '#engine/text.ts';

export type Statement = {
  readonly id: string;
  readonly actor: {
    readonly objectType: 'Agent';
    readonly account: { readonly homePage: string; readonly name: string };
  };
  readonly verb: { readonly id: string; readonly display: LanguageMap };
  readonly object: {
    readonly objectType: 'Activity';
    readonly id: string;
    readonly definition: { readonly name: LanguageMap };
  };
  readonly result?: {
    readonly success: boolean;
    readonly score?: { readonly scaled: number };
  };
  readonly timestamp: string;
  readonly version: '1.0.0';
};

type LanguageMap = Readonly<Record<string, string>>;

/** Of the vocabulary of verbs that ADL publishes under these addresses (named from memory). */
const verbs = {
  passed: { en: 'passed', es: 'aprobó' },
  failed: { en: 'did not pass', es: 'no aprobó' },
  completed: { en: 'completed', es: 'completó' },
} as const satisfies Readonly<Record<string, Text>>;
export type StatementVerb = keyof typeof verbs;

export type Deed = {
  /** A UUID. */
  readonly id: string;
  readonly person: string;
  readonly verb: StatementVerb;
  /** Below the home page: what it was done with. */
  readonly activity: string;
  readonly name: Text;
  /** From 0 to 1. */
  readonly share?: number | undefined;
  /** An instant. */
  readonly at: string;
};

const languageMap = ({ en, es }: Text): LanguageMap => ({ 'en-US': en, 'es-MX': es });

/** `home` is the address of the company, under which its people and activities are named. */
export function statementOf(home: string, deed: Deed): Statement {
  const { verb, share } = deed;
  const score = share === undefined ? {} : { score: { scaled: share } };
  return {
    id: deed.id,
    actor: { objectType: 'Agent', account: { homePage: home, name: deed.person } },
    verb: { id: `http://adlnet.gov/expapi/verbs/${verb}`, display: languageMap(verbs[verb]) },
    object: {
      objectType: 'Activity',
      id: `${home}/${deed.activity}`,
      definition: { name: languageMap(deed.name) },
    },
    ...(verb === 'completed' ? {} : { result: { success: verb === 'passed', ...score } }),
    timestamp: deed.at,
    version: '1.0.0',
  };
}
