/**
 * `serve DIR [--port N]` and `window [DIR] [--port N]`: the window to a browser on this machine, until the person ends it. Prints the one-time
 * address alone on standard output, so that a script can hand it on. Listens on the loopback address and nowhere else.
 */
import { bad, good, problem, type Result } from '../../app/core/result.ts';
import { verbTexts } from '../../app/words/terminal.ts';
import { createHost } from '../host/host.ts';
import { hostOptions } from '../installed.ts';
import { serveLoopback } from '../loopback.ts';
import { type Call, done, type Machine, type Outcome, refused, type Verb } from './verb.ts';

/** The port to use; undefined: the installation's own. */
function portFrom(text: string | undefined): Result<number | undefined> {
  if (text === undefined) return good(undefined);
  const port = /^\d{1,5}$/.test(text) ? Number(text) : Number.NaN;
  return port <= 65535 ? good(port) : bad(problem('not-a-port', '--port', { read: text.slice(0, 60) }));
}

async function serve({ places, options }: Call, machine: Machine): Promise<Outcome> {
  const port = portFrom(options.port);
  if (!port.ok) return refused(...port.problems);
  const settings = hostOptions();
  const host = createHost(settings);
  try {
    if (places.DIR !== undefined) {
      const opened = await host.openFolder(places.DIR);
      if (!opened.ok) return refused(...opened.problems.map((p) => ({ ...p, field: 'DIR' })));
    }
    const ended = machine.ended();
    const served = await serveLoopback(host, { home: settings.home, ...(port.value === undefined ? {} : { port: port.value }) });
    if (!served.ok) return refused(...served.problems.map((p) => ({ ...p, field: p.field === 'port' ? '--port' : p.field })));
    machine.print(served.value.address);
    await ended;
    await served.value.close();
    return done;
  } finally {
    await host.close();
  }
}

export const serveVerb: Verb = {
  usage: 'serve DIR [--port N]',
  does: verbTexts.serve,
  places: ['DIR'],
  options: { port: 'optional' },
  run: serve,
};

export const windowVerb: Verb = {
  usage: 'window [DIR] [--port N]',
  does: verbTexts.window,
  places: ['[DIR]'],
  options: { port: 'optional' },
  run: serve,
};
