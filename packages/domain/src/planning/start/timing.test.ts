import { describe, expect, it } from 'vitest';
import { windowsFor } from '../../pot-life/windows.ts';
import type { ProtocolPlan } from '../../propagation/protocol/stages.ts';
import { stage } from '../sample-facts.ts';
import { pacedFor } from './pace.ts';
import { firstOpenDay, startTiming } from './timing.ts';

const plan: ProtocolPlan = {
  stages: [
    { ...stage('sowing', 0), shortDays: 0 },
    { ...stage('growing-on', 0), shortDays: 50, usualDays: 60, longDays: 80 },
  ],
  dormantMonths: [],
};
const always = windowsFor([], {});
const spring = windowsFor([{ id: 'W', opensMd: '04-15', closesMd: '06-15' }], {});
const at = (today: string, confidence: number, windows = always) =>
  startTiming(plan, { today, targetOn: '2027-06-01', confidence, windows });

describe('the pace of a confidence', () => {
  it.each([
    [0.5, 60],
    [0.749, 60],
    [0.75, 60],
    [0.8, 67],
    [0.825, 70],
    [0.9, 80],
    [0.99, 80],
  ])('%d reckons with %d days', (confidence, days) => {
    expect(pacedFor(plan, confidence).stages[1]?.usualDays).toBe(days);
  });
});

describe('when to start', () => {
  it('is the last day that is in time at the usual pace when little sureness is asked', () => {
    expect(at('2027-01-15', 0.5)).toMatchObject({
      state: 'coming',
      startOn: '2027-04-02',
      readyOn: '2027-06-01',
      usualReadyOn: '2027-06-01',
      missedOn: null,
    });
  });
  it('is earlier when more is asked, and the plants may then be ready before', () => {
    expect(at('2027-01-15', 0.95)).toMatchObject({
      startOn: '2027-03-13',
      readyOn: '2027-06-01',
      usualReadyOn: '2027-05-12',
    });
  });
  it('is this week', () => expect(at('2027-03-29', 0.5)).toMatchObject({ state: 'due', startOn: '2027-04-02' }));
  it('is still the day itself', () =>
    expect(at('2027-04-02', 0.5)).toMatchObject({ state: 'due', startOn: '2027-04-02' }));
  it('is overdue while what goes quickly can be in time', () => {
    expect(at('2027-04-12', 0.5)).toMatchObject({
      state: 'overdue',
      startOn: '2027-04-12',
      missedOn: '2027-04-02',
      readyOn: '2027-06-11',
    });
  });
  it('is too late after that, with the first day that is ready and the first on which it can go out', () => {
    expect(at('2027-04-13', 0.5, spring)).toMatchObject({
      state: 'too-late',
      readyOn: '2027-06-12',
      servesOn: '2027-06-12',
    });
    expect(at('2027-04-20', 0.5, spring)).toMatchObject({
      state: 'too-late',
      readyOn: '2027-06-19',
      servesOn: '2028-04-15',
    });
  });
  it('names the window of the day it is for', () => {
    expect(at('2027-01-15', 0.5, spring).window).toMatchObject({ opensOn: '2027-04-15', closesOn: '2027-06-15' });
    expect(at('2027-01-15', 0.5, windowsFor([{ id: 'W', opensMd: '09-01', closesMd: '10-15' }], {})).window).toBeNull();
  });
});

describe('the first open day', () => {
  it('is the day itself in a window', () => expect(firstOpenDay(spring, '2027-06-15')).toBe('2027-06-15'));
  it('is the next opening after it', () => expect(firstOpenDay(spring, '2027-06-16')).toBe('2028-04-15'));
  it('is any day without windows', () => expect(firstOpenDay(always, '2027-12-24')).toBe('2027-12-24'));
});
