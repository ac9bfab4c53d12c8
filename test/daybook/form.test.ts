import 'fake-indexeddb/auto';
import { beforeEach, describe, expect, test, vi } from 'vitest';
import { Daybook } from '../../app/daybook/book.svelte.ts';
import { EntryForm, type FormPlan, numberOr, textOr } from '../../app/daybook/form.svelte.ts';
import { noPerson, personBody } from '../../app/screens/site/person-plan.ts';
import { noScale, type ScaleValues, scaleBody } from '../../app/screens/site/scale-plan.ts';
import { bookId, clock, keeper, testHost } from './house.ts';

const plan: FormPlan<ScaleValues> = { name: 'scale', kind: 'scale', start: noScale, body: (v) => scaleBody(v) };

async function begun(host = testHost([keeper])) {
  const daybook = new Daybook({ host, clock });
  await daybook.start();
  await daybook.write('person-keeper');
  return { host, daybook };
}

function fill(form: EntryForm<ScaleValues>) {
  form.values.label = 'Bench';
  form.values.maximum = { amount: '3', unit: 'kg' };
  form.values.d = { amount: '0.01', unit: 'g' };
}

beforeEach(async () => {
  await new Promise((resolve) => {
    const gone = indexedDB.deleteDatabase(`retort-daybook-${bookId}`);
    gone.onsuccess = resolve;
    gone.onblocked = resolve;
  });
});

describe('a form on its way to an entry', () => {
  test('what was typed before a crash is there when the form is opened again, with the same id', async () => {
    const one = await begun();
    const form = new EntryForm(one.daybook, plan);
    fill(form);
    await form.saveDraft();
    const { id } = form.draft();
    one.daybook.store.close();

    const two = await begun(one.host);
    const again = new EntryForm(two.daybook, plan);
    await again.restore();
    expect(again.values.label).toBe('Bench');
    expect(again.values.maximum).toEqual({ amount: '3', unit: 'kg' });
    expect(again.takenUp).toBe(clock.now());
    expect(again.draft().id).toBe(id);
    two.daybook.store.close();
  });

  test('typing without a pause is saved a quarter of a second after its first change, and again after the next', async () => {
    const { daybook } = await begun();
    const form = new EntryForm(daybook, plan);
    vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'] });
    const saved: number[] = [];
    vi.spyOn(daybook.store, 'saveDraft').mockImplementation(async () => {
      saved.push(form.values.label.length);
    });
    for (let i = 1; i <= 10; i++) {
      form.values.label = 'x'.repeat(i);
      form.touched();
      vi.advanceTimersByTime(100);
    }
    vi.useRealTimers();
    expect(saved).toEqual([3, 6, 9]);
    daybook.store.close();
  });

  test('a window shut out by a host started anew says so, and leaves the draft to the window opened after it', async () => {
    const { host, daybook } = await begun();
    const form = new EntryForm(daybook, plan);
    fill(form);
    host.shut = true;
    await form.keep();
    expect(form.unreached).toBe('shut');
    expect(form.stage).toBe('writing');
    expect((await daybook.store.draft('scale'))?.content).toMatchObject({ values: { label: 'Bench' } });
    form.values.label = 'Typed afterwards';
    form.touched();
    expect(form.pending).toBe(false);
    daybook.store.close();
  });

  test('a host that does not answer is told as that, with the draft kept, and not as a field that is wrong', async () => {
    const { host, daybook } = await begun();
    const form = new EntryForm(daybook, plan);
    fill(form);
    host.silent = true;
    await form.keep();
    expect(form.unreached).toBe('silent');
    expect((await daybook.store.draft('scale'))?.content).toMatchObject({ values: { label: 'Bench' } });
    host.silent = false;
    await form.keep();
    expect([form.stage, form.unreached]).toEqual(['kept', null]);
    daybook.store.close();
  });

  test('a picture goes with the entry once, named by what it shows, is in the draft, and one the host refuses is told and not named', async () => {
    const { host, daybook } = await begun();
    const form = new EntryForm(daybook, plan);
    fill(form);
    await form.attach(Uint8Array.of(7), 'Display at 885.0 g');
    await form.attach(Uint8Array.of(7), 'the same again');
    await form.attach(Uint8Array.of(8), '');
    const wanted = [{ file: `${'0'.repeat(63)}7.png`, shows: 'Display at 885.0 g' }, { file: `${'0'.repeat(63)}8.png` }];
    expect(form.draft().evidence).toEqual(wanted);
    await form.saveDraft();
    const again = new EntryForm(daybook, plan);
    await again.restore();
    expect(again.draft().evidence).toEqual(wanted);
    host.silent = true;
    await again.attach(Uint8Array.of(9), 'Seal');
    expect(again.notAttached).toHaveLength(1);
    expect(again.draft().evidence).toEqual(wanted);
    host.silent = false;
    expect((await again.keep())?.ok).toBe(true);
    expect(host.lines.at(-1)?.evidence).toEqual(wanted);
    daybook.store.close();
  });

  test('a draft from before forms took pictures is taken up, without any', async () => {
    const { daybook } = await begun();
    const first = new EntryForm(daybook, plan);
    fill(first);
    await first.saveDraft();
    const row = await daybook.store.draft('scale');
    const content = row?.content as { extras: Record<string, unknown> };
    const { evidence: _, ...extras } = content.extras;
    await daybook.store.saveDraft({ form: 'scale', touched: clock.now(), content: { ...content, extras } });
    const again = new EntryForm(daybook, plan);
    await again.restore();
    expect([again.values.label, again.extras.evidence, again.unread]).toEqual(['Bench', [], []]);
    daybook.store.close();
  });

  test('a change is saved within 300 ms, without anybody asking', async () => {
    const { daybook } = await begun();
    const form = new EntryForm(daybook, plan);
    vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'] });
    const saved = vi.spyOn(daybook.store, 'saveDraft');
    form.values.label = 'B';
    form.touched();
    form.values.label = 'Be';
    form.touched();
    expect(form.pending).toBe(true);
    vi.advanceTimersByTime(300);
    vi.useRealTimers();
    expect(saved).toHaveBeenCalledTimes(1);
    expect(form.pending).toBe(false);
    daybook.store.close();
  });

  test('changes are taken back one by one until the entry is kept, and the draft follows', async () => {
    const { daybook } = await begun();
    const form = new EntryForm(daybook, plan);
    await form.restore();
    expect(form.canTakeBack).toBe(false);
    form.values.label = 'Bench';
    form.touched();
    form.values.maximum = { amount: '3', unit: 'kg' };
    form.touched();
    form.takeBack();
    expect([form.values.label, form.values.maximum.amount, form.canTakeBack]).toEqual(['Bench', '', true]);
    await form.saveDraft();
    const row = await daybook.store.draft('scale');
    expect(row?.content).toMatchObject({ values: { maximum: { amount: '' } } });
    form.takeBack();
    expect([form.values.label, form.canTakeBack]).toEqual(['', false]);
    daybook.store.close();
  });

  test('a draft that was thrown away can be brought back, with its id, and after keeping no more', async () => {
    const { daybook } = await begun();
    const form = new EntryForm(daybook, plan);
    await form.restore();
    fill(form);
    const { id } = form.draft();
    await form.startAfresh();
    expect([form.values.label, form.thrown]).toEqual(['', true]);
    expect(form.draft().id).not.toBe(id);
    form.bringBack();
    expect([form.values.label, form.thrown, form.draft().id]).toEqual(['Bench', false, id]);
    expect((await form.keep())?.ok).toBe(true);
    await form.startAfresh();
    form.bringBack();
    expect([form.values.label, form.thrown]).toEqual(['', false]);
    daybook.store.close();
  });

  test('a window that only reads leaves the draft of the writing one alone', async () => {
    const { daybook } = await begun();
    const writing = new EntryForm(daybook, plan);
    writing.values.label = 'Bench';
    await writing.saveDraft();
    daybook.elsewhere = true;
    const reading = new EntryForm(daybook, plan);
    reading.values.label = 'Other';
    await reading.saveDraft();
    expect((await daybook.store.draft('scale'))?.content).toMatchObject({ values: { label: 'Bench' } });
    daybook.store.close();
  });

  test('keeping an unfinished form tells every problem at its field and writes nothing', async () => {
    const { host, daybook } = await begun();
    const form = new EntryForm(daybook, plan);
    form.values.maximum = { amount: '3,5', unit: 'kg' };
    form.values.U = { amount: '0.03', unit: 'g' };
    expect(await form.keep()).toBeNull();
    expect(form.stage).toBe('writing');
    expect(form.problems.map((p) => p.field)).toEqual(['body.label', 'body.maximum', 'body.d', 'body.certificate.at']);
    expect(form.at('body.maximum')[0]).toContain('3,5 kg');
    expect(host.lines.length).toBe(1);
    daybook.store.close();
  });

  test('a problem that no field shows is told at the foot of the sheet', async () => {
    const { daybook } = await begun();
    const form = new EntryForm(daybook, plan);
    form.at('body.label');
    form.below('body.certificate');
    form.values.U = { amount: '0.03', unit: 'g' };
    form.check();
    // name and certificate have their fields; maximum and division have none here
    expect(form.homeless.length).toBe(2);
    daybook.store.close();
  });

  test('the draft goes only after the entry is kept', async () => {
    const { host, daybook } = await begun();
    const form = new EntryForm(daybook, plan);
    fill(form);
    host.silent = true;
    const silent = await form.keep();
    expect(silent?.ok).toBe(false);
    expect(form.stage).toBe('writing');
    expect((await daybook.store.draft('scale'))?.form).toBe('scale');
    host.silent = false;
    await form.keep();
    expect(form.stage).toBe('kept');
    expect(form.kept?.entry.n).toBe(2);
    expect(await daybook.store.draft('scale')).toBeUndefined();
    expect(host.lines[1]?.body).toEqual({ label: 'Bench', maximum: '3 kg', d: '0.01 g' });
    expect(host.lines[1]?.by).toBe('person-keeper');
    daybook.store.close();
  });

  test('nobody named as writing is asked for once somebody is in the register', async () => {
    const { daybook } = await begun();
    await daybook.write(null);
    const form = new EntryForm(daybook, plan);
    fill(form);
    expect(form.check()).toBe(false);
    expect(form.problems.map((p) => p.code)).toEqual(['writer-missing']);
    daybook.store.close();
  });

  test('the first person of a book writes their own entry and goes on writing', async () => {
    const { host, daybook } = await begun(testHost());
    await daybook.write(null);
    const form = new EntryForm(daybook, { name: 'person', kind: 'person', start: noPerson, body: (v) => personBody(v) });
    form.values.name = 'Keeper';
    form.values.roles = ['keeper'];
    await form.keep();
    expect(host.lines[0]?.by).toBe(host.lines[0]?.id);
    expect(daybook.writer).toBe(host.lines[0]?.id);
    const second = new EntryForm(daybook, { name: 'person', kind: 'person', start: noPerson, body: (v) => personBody(v) });
    expect(second.draft().by).toBe(host.lines[0]?.id);
    daybook.store.close();
  });

  test('a day without a time stands at noon and says that it is a day only', async () => {
    const { daybook } = await begun();
    const form = new EntryForm(daybook, plan);
    form.when = { day: '2026-03-10', time: '', timing: 'day' };
    expect(form.draft()).toMatchObject({ happened: '2026-03-10T12:00+13:00', timing: 'day' });
    daybook.store.close();
  });

  test('an emptied day is missing, not today', async () => {
    const { daybook } = await begun();
    const form = new EntryForm(daybook, plan);
    fill(form);
    form.when = { day: '', time: '09:00', timing: 'exact' };
    form.check();
    expect(form.problems.map((p) => [p.code, p.field])).toEqual([['missing', 'happened']]);
    daybook.store.close();
  });

  test('a draft of another shape is told and kept aside as it is, and the form begins empty', async () => {
    const { daybook } = await begun();
    const content = { id: 'x', values: { other: 1 } };
    await daybook.store.saveDraft({ form: 'scale', touched: clock.now(), content });
    const form = new EntryForm(daybook, plan);
    await form.restore();
    expect(form.values.label).toBe('');
    expect(form.takenUp).toBe('');
    expect(form.unread.map((row) => [row.content, row.touched])).toEqual([[content, clock.now()]]);
    daybook.store.close();
  });

  const damages: readonly (readonly [string, (content: Record<string, unknown>) => unknown])[] = [
    ['nothing at all', () => null],
    ['a text', () => 'Bench'],
    ['no id', ({ id: _, ...rest }) => rest],
    ['an id that is none', (content) => ({ ...content, id: '../x' })],
    ['no day', (content) => ({ ...content, when: null })],
    ['another exactness', (content) => ({ ...content, when: { day: '', time: '', timing: 'roughly' } })],
    ['no further particulars', ({ extras: _, ...rest }) => rest],
    ['witnesses that are no list', (content) => ({ ...content, extras: { ...(content.extras as object), witness: 'Keeper' } })],
    ['a number for a name', (content) => ({ ...content, values: { ...(content.values as object), label: 7 } })],
    ['no maximum', (content) => ({ ...content, values: { ...(content.values as object), maximum: null } })],
    ['a field this version does not have', (content) => ({ ...content, values: { ...(content.values as object), newer: 'x' } })],
    ['a list for the values', (content) => ({ ...content, values: [content.values] })],
  ];
  test.each(damages)(
    'a draft with %s is kept aside, nothing typed later is written over it, and it goes only when told to',
    async (_, damage) => {
      const { daybook } = await begun();
      const first = new EntryForm(daybook, plan);
      fill(first);
      await first.saveDraft();
      const sound = (await daybook.store.draft('scale'))?.content as Record<string, unknown>;
      const content = damage(sound);
      await daybook.store.saveDraft({ form: 'scale', touched: clock.now(), content });

      const form = new EntryForm(daybook, plan);
      await form.restore();
      expect([form.takenUp, form.values.label, form.restored]).toEqual(['', '', true]);
      form.values.label = 'Typed after';
      await form.saveDraft();
      await form.restore();
      expect([form.values.label, form.unread.map((row) => row.content)]).toEqual(['Typed after', [content]]);
      await form.startAfresh();
      expect((await daybook.store.drafts()).map((row) => row.content)).toEqual([content]);
      const [row] = form.unread;
      if (row) await form.dropUnread(row);
      expect([form.unread, await daybook.store.drafts()]).toEqual([[], []]);
      daybook.store.close();
    },
  );

  test('several drafts that could not be read are kept beside each other, and two forms at once do not lose one', async () => {
    const { daybook } = await begun();
    for (const content of ['first', 'second']) {
      await daybook.store.saveDraft({ form: 'scale', touched: clock.now(), content });
      const [one, two] = [new EntryForm(daybook, plan), new EntryForm(daybook, plan)];
      await Promise.all([one.restore(), two.restore()]);
    }
    const form = new EntryForm(daybook, plan);
    await form.restore();
    expect(new Set(form.unread.map((row) => row.content))).toEqual(new Set(['first', 'second']));
    daybook.store.close();
  });

  test('where it cannot be put aside the draft lies where it lay, and the form says that its own is not saved', async () => {
    const { daybook } = await begun();
    await daybook.store.saveDraft({ form: 'scale', touched: clock.now(), content: 'damaged' });
    vi.spyOn(daybook.store, 'saveDraft').mockRejectedValue(new Error('the disk is full'));
    const form = new EntryForm(daybook, plan);
    await form.restore();
    form.values.label = 'Typed after';
    await form.saveDraft();
    await form.startAfresh();
    expect([form.draftLost, form.unread.map((row) => row.content)]).toEqual([true, ['damaged']]);
    expect((await daybook.store.draft('scale'))?.content).toBe('damaged');
    daybook.store.close();
  });

  test('a window that only reads tells a draft it cannot read and moves nothing', async () => {
    const { daybook } = await begun();
    await daybook.store.saveDraft({ form: 'scale', touched: clock.now(), content: 'damaged' });
    daybook.elsewhere = true;
    const form = new EntryForm(daybook, plan);
    await form.restore();
    expect(form.unread.map((row) => row.form)).toEqual(['scale']);
    expect((await daybook.store.draft('scale'))?.content).toBe('damaged');
    daybook.store.close();
  });
});

describe('what is typed', () => {
  test('a number is a number, nothing is nothing, and what is neither goes through to be refused', () => {
    expect([numberOr('0.38'), numberOr(''), numberOr(' 2 '), numberOr('0,38'), numberOr('1e3')]).toEqual([
      0.38,
      undefined,
      2,
      '0,38',
      '1e3',
    ]);
  });
  test('blanks around a text are not part of it', () => {
    expect([textOr('  Bench '), textOr('   ')]).toEqual(['Bench', undefined]);
  });
});
