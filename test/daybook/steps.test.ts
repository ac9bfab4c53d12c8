import { describe, expect, test } from 'vitest';
import { changedAt, Steps } from '../../app/daybook/steps.ts';

describe('changes of a form', () => {
  test('are told by where they are: a member, a row more, a row less', () => {
    expect(changedAt({ a: 1 }, { a: 1 })).toBeNull();
    expect(changedAt({ a: { b: 'x' } }, { a: { b: 'xy' } })).toBe('/a/b');
    expect(changedAt({ rows: ['1'] }, { rows: ['1', ''] })).toBe('/rows/more 2');
    expect(changedAt({ rows: ['1', '2'] }, { rows: ['1'] })).toBe('/rows/less 1');
  });

  test('typing on in one field is one step, another field the next', () => {
    const steps = new Steps({ label: '', weight: '' });
    for (const label of ['B', 'Ba', 'Ball']) steps.note({ label, weight: '' });
    steps.note({ label: 'Ball', weight: '9' });
    steps.note({ label: 'Ball', weight: '95' });
    expect(steps.count).toBe(2);
    expect(steps.back()).toEqual({ label: 'Ball', weight: '' });
    expect(steps.back()).toEqual({ label: '', weight: '' });
    expect(steps.back()).toBeNull();
  });

  test('after a step was taken back, typing in the same field is a step of its own', () => {
    const steps = new Steps({ label: '' });
    steps.note({ label: 'one' });
    steps.back();
    steps.note({ label: 'two' });
    expect(steps.back()).toEqual({ label: '' });
  });

  test('the oldest of very many steps are forgotten, none of the newest', () => {
    const steps = new Steps<{ rows: string[] }>({ rows: [] });
    for (let i = 1; i <= 100; i++) steps.note({ rows: Array.from({ length: i }, () => '') });
    expect(steps.count).toBe(60);
    expect(steps.back()?.rows).toHaveLength(99);
  });
});
