/** How what verifiers ask for is answered: to any page of any site, and kept for a short while. */
const seconds = 300;

/** What is not there is answered alike, whatever was asked for. */
export const publicAnswer = (value: object | undefined, type = 'application/json'): Response =>
  value === undefined
    ? Response.json({ error: 'ABSENT' }, { status: 404 })
    : new Response(JSON.stringify(value), {
        headers: {
          'content-type': type,
          'access-control-allow-origin': '*',
          'cache-control': `public, max-age=${seconds}`,
        },
      });
