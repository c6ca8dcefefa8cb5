import { describe, expect, test } from 'vitest';
import {
  type BoxKind,
  briefJsonSchema,
  closed,
  design,
  radiatorBox,
  standard,
} from '../../../packages/airspring/src/index.js';
import { demo, demoRadiator } from '../../arbitrary/brief.js';
import { faultsOf } from '../../refusal/faults.js';

const wanted = { lowest: '45 Hz', highest: '120 Hz', level: '88 dB', fall: '6 dB' };
const radiators = [{ ...demoRadiator, faces: ['left'] }];
const brief = { ...demo, wanted };
/** The same without anything that only some kinds read. */
const { vent: _vent, printer: _printer, box: _box, ...plain } = brief;

const faults = (given: object, kinds?: readonly BoxKind[]) => faultsOf(() => design(given, kinds && { kinds }));
const pathsOf = (given: object, kinds?: readonly BoxKind[]) => faults(given, kinds).map(({ path }) => path);

describe('what only a kind that must be named would read', () => {
  test.each([
    ['radiators', radiators],
    ['slot', { largest: '30 mm' }],
    ['flare', { inner: '20 mm' }],
  ])('%s is refused where box.kinds is left out, and where it names others', (section, value) => {
    expect(pathsOf({ ...brief, [section]: value })).toEqual([section]);
    expect(pathsOf({ ...brief, box: { kinds: ['closed'] }, [section]: value })).toEqual([section]);
  });

  test('a misspelt name of the kind is the only fault', () => {
    expect(pathsOf({ ...brief, box: { kinds: ['radiatr'] }, radiators })).toEqual(['box.kinds[0]']);
  });

  test('the fault says which kind to name', () => {
    const [fault] = faults({ ...brief, radiators });
    expect(fault).toMatchObject({
      code: 'inconsistent',
      path: 'radiators',
      expected: '"radiator" in box.kinds, since no other kind of box uses this field',
      remedy: 'Name it there, or remove the field.',
    });
  });

  test('a single field is refused where others of its section are used', () => {
    const called = { ...closed, name: 'padded', byName: true as const, fields: { box: { pad: closed.fields.box.QA } } };
    expect(pathsOf({ ...plain, box: { QL: 9, pad: 20 } }, [closed, called as unknown as BoxKind])).toEqual(['box.pad']);
  });

  test('sections of kinds that are tried by default may stay where box.kinds names others', () => {
    expect(pathsOf({ ...brief, box: { kinds: ['closed'] } })).toEqual([]);
  });
});

describe('which kinds are tried when box.kinds is left out', () => {
  test('every kind that was passed in, unless it must be named', () => {
    const own = { ...closed, name: 'own' };
    const answer = design(plain, { kinds: [own, radiatorBox] });
    expect(answer.ok).toBe(true);
    if (answer.ok) expect(new Set(answer.designs.map(({ called }) => called))).toEqual(new Set(['a closed box']));
  });

  test('a brief is refused where all of them must be named', () => {
    expect(faults({ ...plain, radiators }, [radiatorBox])).toMatchObject([
      {
        code: 'empty',
        path: 'box.kinds',
        expected: 'at least one of "radiator": each of these kinds is tried only where it is named',
        remedy: 'Name the kinds of box to try.',
      },
    ]);
    const named = { ...plain, box: { kinds: ['radiator'] }, radiators };
    expect(design(named, { kinds: [radiatorBox] }).ok).toBe(true);
  });

  test('no kinds at all are refused', () => {
    expect(pathsOf(plain, [])).toEqual(['kinds']);
  });

  test('the schema for editors says which are tried and which must be named', () => {
    const kindsIn = (kinds: readonly BoxKind[]) =>
      (briefJsonSchema({ kinds }) as { properties: { box: { properties: { kinds: { description: string } } } } })
        .properties.box.properties.kinds.description;
    expect(kindsIn(standard)).toBe(
      'kinds of box to try; default closed, vented. These are tried only if they are named: slot-vented, flared-vented, radiator, capacitor, aperiodic, band-pass, parallel-band-pass, series-band-pass, line, stepped-line, tapered-line, open-baffle',
    );
    expect(kindsIn([radiatorBox])).toBe('kinds of box to try; each must be named');
  });
});
