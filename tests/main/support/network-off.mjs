/**
 * Stands for a computer without a network, as a module that a program of Node is started with (`--import`): names are not
 * found, and no connection goes further than this computer. Each try is written to the file that `WINDROW_TRIES` names.
 */
import { appendFileSync } from 'node:fs';
import dgram from 'node:dgram';
import dns from 'node:dns';
import { syncBuiltinESMExports } from 'node:module';
import net from 'node:net';

const TRIES = process.env['WINDROW_TRIES'] ?? '';
const HERE = /^(?:127\.0\.0\.1|::1|localhost)$/;

/** @param {string} what */
function refuse(what) {
  appendFileSync(TRIES, `${what}\n`);
  return Object.assign(new Error(`no network: ${what}`), { code: 'ENETUNREACH' });
}

const connect = net.Socket.prototype.connect;
/** @param {...any} given */
net.Socket.prototype.connect = function (...given) {
  const [options] = Array.isArray(given[0]) ? given[0] : given;
  const { path, host = 'localhost' } =
    typeof options === 'object'
      ? options
      : { path: undefined, host: typeof given[1] === 'string' ? given[1] : undefined };
  if (path === undefined && !HERE.test(host)) throw refuse(`connection to ${host}`);
  return Reflect.apply(connect, this, given);
};

for (const names of [dns, dns.promises]) {
  for (const name of Object.keys(names).filter((each) => /^(?:lookup|resolve|reverse)/.test(each))) {
    const asked = Reflect.get(names, name);
    Reflect.set(names, name, (/** @type {any[]} */ ...given) => {
      if (!HERE.test(String(given[0]))) throw refuse(`${name} of ${given[0]}`);
      return Reflect.apply(asked, names, given);
    });
  }
}

Reflect.set(dgram, 'createSocket', () => {
  throw refuse('a datagram');
});
syncBuiltinESMExports();
