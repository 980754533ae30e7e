import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';

type Person = { readonly company: string; readonly person: string };
type Received = { readonly by: string; readonly ids: readonly string[] };

/** A small company server that keeps attempts by id, as the app's own does. */
export async function companyServer() {
  const kept = new Map<string, string>();
  const received: Received[] = [];
  const state = {
    signedIn: undefined as Person | undefined,
    /** The status that it answers with instead. */
    status: 0,
    refused: new Set<string>(),
    score: 80,
  };
  const server = createServer((request, response) => {
    const say = (status: number, body: unknown) => {
      response.writeHead(status, { 'content-type': 'application/json' });
      response.end(JSON.stringify(body));
    };
    const { signedIn } = state;
    if (request.url === '/me') {
      const one = signedIn && { ...signedIn, companyName: 'Test', roles: ['apprentice'] };
      say(200, { name: signedIn ? 'Ana' : null, companies: one ? [one] : [] });
      return;
    }
    let text = '';
    request.on('data', (part: Buffer) => (text += part.toString()));
    request.on('end', () => {
      if (state.status) return say(state.status, {});
      if (!signedIn) return say(401, { error: 'SIGN_IN' });
      const { attempts } = JSON.parse(text) as { attempts: { kept: { id: string } }[] };
      const ids = attempts.map((one) => one.kept.id);
      received.push({ by: signedIn.person, ids });
      const receipts = ids.map((id) => {
        if (state.refused.has(id)) return { id, refused: [{ code: 'UNKNOWN_STEP', path: 'kept' }] };
        if (kept.has(id) && kept.get(id) !== signedIn.person) return { id, refused: 'NOT_YOURS' };
        const before = kept.has(id);
        kept.set(id, signedIn.person);
        return { id, kept: before ? 'before' : 'now', score: state.score, outcome: 'rework' };
      });
      say(200, { receipts });
    });
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const { port } = server.address() as AddressInfo;
  return {
    address: `http://127.0.0.1:${port}`,
    kept,
    received,
    state,
    stop: () =>
      new Promise<void>((resolve) => {
        server.close(() => resolve());
        server.closeAllConnections();
      }),
  };
}
