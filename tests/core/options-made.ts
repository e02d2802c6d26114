import type { Option } from '../../src/core/option.ts';
import type { CurrentTrack } from '../../src/core/option-match.ts';
import type { OptionMachine } from '../../src/core/option-life.ts';
import type { OptionAnswer, OptionsInput } from '../../src/core/option-answer.ts';
import { optionsFor, type OptionsResult } from '../../src/core/options.ts';
import type { TrackKind } from '../../src/core/machine.ts';
import { assert } from '../../src/core/result.ts';
import { builtIn } from '../../src/reference/built-in.ts';
import { startingCostsFor } from '../../src/reference/cost-classes.ts';
import { optionPrices } from '../../src/reference/option-prices.ts';
import { optionTables } from '../../src/reference/option-tables.ts';
import { shapeOf } from './made.ts';

/** Made-up options, machines and questions; every test says only what matters to it. */

export const optionOf = (track: TrackKind, more: Partial<Option> = {}): Option => ({
  v: 1,
  name: 'made up',
  track,
  ...more,
});

export const priced = (minor: number, currency = 'EUR') => ({ price: { minor, currency } });

export const mini: OptionMachine = { kind: 'excavator', massKg: 5500, shape: shapeOf('rubber-cored') };
export const rubberNow: CurrentTrack = { track: 'rubber-cored' };

type Asked = Partial<Omit<OptionsInput, 'options'>> & { readonly options: Readonly<Record<string, Option>> };

/** The question with the starting prices and rates of the machine, unless it brings its own. */
export function asked({ options, ...more }: Asked): OptionsInput {
  const machine = more.machine ?? mini;
  const { prices = '', rates = '' } = startingCostsFor(machine);
  const costs = { prices: builtIn.prices[prices], rates: builtIn.rates[rates], open: [] };
  return {
    machine,
    current: undefined,
    use: {},
    pricesFor: optionPrices(machine, costs),
    tables: optionTables,
    ...more,
    options: Object.entries(options).map(([id, option]) => ({ id, option })),
  };
}

export const answered = (question: Asked): OptionsResult => optionsFor(asked(question));

export function answerTo({ ranked, others }: OptionsResult, id: string): OptionAnswer {
  const found = [...ranked, ...others].find((each) => each.id === id);
  assert(found, `no option ${id}`);
  return found;
}

export const rankedIds = ({ ranked }: OptionsResult): readonly string[] => ranked.map(({ id }) => id);

export const rubberOrSteel = { rubber: optionOf('rubber-cored'), steel: optionOf('steel') };
