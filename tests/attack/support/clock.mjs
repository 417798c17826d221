/**
 * Imported by a program before its own first line: its clock then differs by WINDROW_CLOCK
 * milliseconds. The signal SIGUSR2 turns it back by that much once more, while it runs.
 */
const RealDate = Date;
const step = Number(process.env['WINDROW_CLOCK'] ?? 0);
let offset = step;
process.on('SIGUSR2', () => (offset += step));

const now = () => RealDate.now() + offset;

globalThis.Date = new Proxy(RealDate, {
  construct: (target, given, made) => Reflect.construct(target, given.length === 0 ? [now()] : given, made),
  apply: () => new RealDate(now()).toString(),
  get: (target, name, receiver) => (name === 'now' ? now : Reflect.get(target, name, receiver)),
});
