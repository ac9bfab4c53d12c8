/** A program that a walk started ends with the walk, also where a test failed before it could close it. */
import type { ChildProcess } from 'node:child_process';

export function endsWithUs<Child extends ChildProcess>(child: Child): Child {
  const end = () => child.kill('SIGKILL');
  process.once('exit', end);
  child.once('exit', () => process.off('exit', end));
  return child;
}
