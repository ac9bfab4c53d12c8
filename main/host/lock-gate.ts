/**
 * Stands before every question about the open daybook: locked, none of them is answered; unlocked by a passphrase, what is handed over follows what that
 * person does at the site (`book/may-see.ts`). The lines that tell what they may not see keep their place and hash in the chain and say nothing else.
 */
import type { AskOf, HostState, OpenBook, Question, ReplyOf } from '../../app/contract.ts';
import { readCurrent } from '../../app/core/book/current.ts';
import { type Hidden, maySee, rolesAt } from '../../app/core/book/may-see.ts';
import { latest, readRegisters } from '../../app/core/book/registers.ts';
import { withheldOf, withoutThese } from '../../app/core/book/withheld.ts';
import type { Entry } from '../../app/core/entry.ts';
import type { Role } from '../../app/core/kinds/person.ts';
import { bad, good, type Problem, problem, type Result } from '../../app/core/result.ts';
import { readDaybook } from './daybook-folder.ts';
import { sessionLock } from './lock-session.ts';
import type { OpenDaybook } from './open-daybook.ts';
import { checkSignatures } from './sign-check.ts';

type Doing = { readonly [Q in Question]: (ask: AskOf<Q>) => Promise<Result<ReplyOf<Q>>> };
type Own = 'lock' | 'unlock' | 'lock-after' | 'passphrase' | 'signatures';

/** What the gate needs of the host. */
export interface GateFrom {
  readonly home: string;
  readonly millis: () => number;
  readonly clock: () => string;
  readonly inTurn: <T>(act: () => Result<T>) => Promise<Result<T>>;
  readonly open: () => OpenDaybook | null;
  readonly state: () => Result<HostState>;
}

/** Asked of a locked host all the same: they show nothing of what is in the book. */
const always: ReadonlySet<string> = new Set(['state', 'open', 'close', 'lock', 'unlock']);
/** What writes in the book. */
const writing: ReadonlySet<string> = new Set(['keep', 'import', 'close-period', 'evidence', 'restore']);
/** Papers that tell of one person. */
const personal: ReadonlySet<string> = new Set(['personal-air-record']);

const noDaybook: Problem = problem('no-daybook-open', '');
const things: readonly Hidden[] = ['bar-place', 'personal-air'];

export interface LockGate {
  readonly opened: (daybookId: string) => void;
  readonly closed: () => void;
  /** What the window is told: nothing from inside the book while it is locked. */
  readonly told: (book: OpenBook | null) => Pick<HostState, 'book' | 'lock'>;
  readonly doing: Pick<Doing, Own>;
  readonly guarded: (doing: Doing) => Doing;
  /** The entries as whoever unlocked may see them. */
  readonly shown: (entries: readonly Entry[]) => readonly Entry[];
  readonly refusal: () => Problem | null;
}

export function lockGate(from: GateFrom): LockGate {
  const { inTurn, open, state, clock } = from;
  const session = sessionLock(from.home, from.millis);

  /** What whoever unlocked does here; null where nobody has a passphrase. */
  const roles = (): readonly Role[] | null => {
    const person = session.as();
    if (person === null) return null;
    const whole = open()?.whole();
    return whole?.ok ? rolesAt(readRegisters(readCurrent(whole.value.entries.filter(inRegister))), person, clock()) : [];
  };
  const readsOnly = (): boolean => roles()?.every((role) => role === 'reader') ?? false;

  const shown: LockGate['shown'] = (entries) => {
    const does = roles();
    if (does === null || things.every((what) => maySee(does, what))) return entries;
    const hidden = withheldOf(entries);
    const not = (id: string): boolean => {
      const what = hidden.get(id);
      return what !== undefined && !maySee(does, what);
    };
    return withoutThese(entries, not);
  };

  /** Why this question is not answered for whoever sits there; null where it is. */
  const against = (name: Question, ask: unknown): Problem | null => {
    if (always.has(name)) return null;
    const locked = session.refusal();
    if (locked || session.as() === null) return locked;
    if (writing.has(name) && readsOnly()) return problem('reads-only', '');
    const { by, name: paper } = ask as { by?: unknown; name?: unknown };
    if (writing.has(name) && typeof by === 'string' && !session.mayWriteAs(by)) return problem('by-locked', 'by');
    if (name === 'paper' && personal.has(String(paper)) && !maySee(roles() ?? [], 'personal-air'))
      return problem('not-for-this-view', 'name');
    return null;
  };

  const stateAfter = async (act: Promise<Result<null>>): Promise<Result<HostState>> => {
    const done = await act;
    return done.ok ? inTurn(state) : done;
  };

  const nameOf = (person: string): Result<string> => {
    const whole = open()?.whole() ?? bad(noDaybook);
    if (!whole.ok) return whole;
    const known = readRegisters(readCurrent(whole.value.entries.filter(inRegister))).person.get(person);
    return known ? good(latest(known).body.name) : bad(problem('unknown-person', 'person'));
  };

  return {
    opened: session.opened,
    closed: session.closed,
    refusal: session.refusal,
    shown,
    told: (book) => {
      const lock = session.told();
      if (!lock) return { book };
      // the branches of a fork show lines of the book
      const bare = book && lock.locked ? { ...book, notices: book.notices.map(({ branches: _, ...notice }) => notice) } : book;
      return { book: bare, lock: { ...lock, reads: !lock.locked && readsOnly() } };
    },
    doing: {
      lock: () =>
        inTurn(() => {
          session.lock();
          return state();
        }),
      unlock: ({ person, passphrase }) => stateAfter(session.unlock(person, passphrase)),
      'lock-after': ({ minutes }) => stateAfter(inTurn(() => (open() ? session.lockAfter(minutes) : bad(noDaybook)))),
      passphrase: async ({ person, before, after }) => {
        const name = await inTurn(() => nameOf(person));
        return name.ok ? stateAfter(session.setPassphrase(person, name.value, before, after)) : name;
      },
      signatures: () =>
        inTurn(() => {
          const folder = open()?.folder;
          if (folder === undefined) return bad(noDaybook);
          const read = readDaybook(folder);
          if (!read.ok) return read;
          const { desks, faults } = checkSignatures(folder, read.value);
          return good({ desks: [...desks], faults: faults.map(({ problem: p }) => p) });
        }),
    },
    guarded: (doing) =>
      Object.fromEntries(
        Object.entries(doing).map(([name, act]) => [
          name,
          async (ask: never) => {
            const why = against(name as Question, ask);
            return why ? bad(why) : (act as (ask: never) => Promise<Result<unknown>>)(ask);
          },
        ]),
      ) as unknown as Doing,
  };
}

/** What the register of people is read from, without the rest of the book. */
function inRegister({ kind, body }: Entry): boolean {
  return kind === 'person' || kind === 'strike' || (kind === 'correction' && 'name' in ((body.body ?? {}) as object));
}
