/** `npm run -s daybook -- VERB …`: builds when it must, then is the built command, in the same process: same streams, same exit code. */
import { pathToFileURL } from 'node:url';
import { build, whyNot } from './build.mjs';
import { daybookCommand, say } from './paths.mjs';
import { startedIn } from './started-in.mjs';

try {
  await build();
} catch (error) {
  say(JSON.stringify({ problem: `The program could not be built: ${whyNot(error)}`, field: '' }));
  process.exit(2);
}
process.chdir(startedIn('daybook'));
process.argv[1] = daybookCommand;
await import(pathToFileURL(daybookCommand).href);
