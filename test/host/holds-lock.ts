/** A process of its own that takes a lock, says so, and holds it until its input ends. */
import { takeLock } from '../../main/host/lock.ts';

const taken = takeLock(process.argv[2] ?? '');
process.stdout.write(`${JSON.stringify(taken.ok ? { ok: true } : taken)}\n`);
process.stdin.resume();
process.stdin.on('end', () => {
  if (taken.ok) taken.value.release();
});
