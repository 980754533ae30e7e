import type { Bearer } from '#server/api/tokens.ts';
import type { Desk } from '#server/desk.ts';
import type { Session } from '#server/logins/session.ts';
import type { Member } from '#server/people/member.ts';
import type { Language } from '#engine/text.ts';

declare global {
  namespace App {
    interface Error {
      message: string;
      /** Under which it stands in the log. */
      id?: string;
      code?: string;
    }

    interface Locals {
      /** The language this request is answered in. */
      language: Language;
      /** When it came, in ISO 8601. */
      at: string;
      /** Where an answer failed because the records could not be reached or written for now. */
      isOutage?: true;
      /** Behind every door that is not open. */
      desk?: Desk;
      session?: Session;
      /** Behind every door into a company. */
      member?: Member;
      /** Behind every door for tokens. */
      bearer?: Bearer;
    }
  }
}
