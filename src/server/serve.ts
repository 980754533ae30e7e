/** Serves the built app, as the settings say. */
import { existsSync } from 'node:fs';
import { createServer, type RequestListener } from 'node:http';
import { networkInterfaces } from 'node:os';
import { mostBytes } from './access/body.ts';
import { believedHeaders } from './proxies.ts';
import { framedByNobody, safeHeaders } from './safe-headers.ts';
import { settingsFrom } from './settings.ts';

// A request under way when the server is told to stop gets this long to end.
const graceMilliseconds = 10_000;

function stop(message: string): never {
  process.stderr.write(`${message}\n`);
  process.exit(1);
}

const settings = settingsFrom(process.env);
if (!settings.ok) stop(settings.error.join('\n'));
const { host, port, proxies } = settings.value;

const built = new URL('../../build/handler.js', import.meta.url);
if (!existsSync(built)) stop('The app is not built yet. Run: npm start');

// Read by the handler when it is loaded. A roster may have 1 MB; as a field of a form it takes more.
process.env['BODY_SIZE_LIMIT'] ??= '3M';
process.env['PROTOCOL_HEADER'] ??= 'x-forwarded-proto';
process.env['HOST_HEADER'] ??= 'x-forwarded-host';
process.env['ADDRESS_HEADER'] ??= 'x-forwarded-for';
// Also for what comes without saying how long it is; most addresses take less.
process.env['BODY_SIZE_LIMIT'] = String(mostBytes);
const { handler } = (await import(built.href)) as { readonly handler: RequestListener };

const server = createServer((request, response) => {
  request.headers = believedHeaders(request.headers, request.socket.remoteAddress, proxies);
  // Files of the build answer with these; a page made for the request brings its own policy.
  for (const [name, value] of Object.entries(safeHeaders)) response.setHeader(name, value);
  response.setHeader('content-security-policy', framedByNobody);
  handler(request, response);
});

/** Where a browser finds the server: itself, and for a server open to all, the network's names for it. */
const addresses = (): readonly string[] => {
  const bound = server.address();
  const at = typeof bound === 'object' && bound !== null ? bound.port : port;
  if (host !== '0.0.0.0' && host !== '::') {
    return [`http://${host.includes(':') ? `[${host}]` : host}:${at}`];
  }
  const outside = Object.values(networkInterfaces())
    .flatMap((found) => found ?? [])
    .filter(({ family, internal }) => family === 'IPv4' && !internal)
    .map(({ address }) => `http://${address}:${at}`);
  return [`http://127.0.0.1:${at}`, ...outside];
};

server.on('error', (error: NodeJS.ErrnoException) => {
  const where = `port ${port} on ${host}`;
  if (error.code === 'EADDRINUSE') {
    stop(`Cannot serve: ${where} is taken. Choose another, as in: PORT=${port + 1} npm start`);
  }
  if (error.code === 'EACCES') {
    stop(`Cannot serve: this user may not open ${where}. Choose a port from 1024 up.`);
  }
  if (error.code === 'EADDRNOTAVAIL' || error.code === 'ENOTFOUND') {
    stop(`Cannot serve: ${host} is no address of this machine. Try HOST=127.0.0.1 or HOST=0.0.0.0`);
  }
  throw error;
});

server.listen(port, host, () => {
  process.stdout.write(`Underlap is at ${addresses().join(' and ')}\n`);
});

let stopping = false;
const end = (): void => {
  if (stopping) return;
  stopping = true;
  // Parts of the app that hold something open, a database first of all, let go on this event.
  server.close(() => process.emit('sveltekit:shutdown' as 'SIGTERM'));
  server.closeIdleConnections();
  setTimeout(() => server.closeAllConnections(), graceMilliseconds).unref();
};
process.once('SIGTERM', end);
process.once('SIGINT', end);
