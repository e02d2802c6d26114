import { isToSettle } from '../../core/rental-line.ts';
import { hoursText, ownerText, upFrontTexts } from '../../words/charge-text.ts';
import { charge as words } from '../../words/en/charge.ts';
import { groundWords } from '../../words/en/choices.ts';
import { common } from '../../words/en/common.ts';
import { verdict } from '../../words/en/verdict.ts';
import { formatter } from '../data/format.ts';
import { walkPath } from '../data/paths.ts';
import type { WalkModel } from '../data/walk-model.ts';
import { ButtonLink } from '../parts/button.tsx';
import { Facts } from '../parts/facts.tsx';
import { Screen, Section } from '../parts/screen.tsx';
import { contractPath } from '../rental/links.tsx';
import { useSeals } from '../sealing/use-seals.ts';
import { ChargeCard, FoldedLine } from './charge-card.tsx';
import { ChargePage } from './charge-page.tsx';
import { useCharge, type Charge } from './load-charge.ts';
import { isAnew, signedCharge, signedSum } from './signed-charge.ts';
import parts from '../parts/parts.module.css';
import styles from './charging.module.css';

/** What a rental return is billed for; under `charge/page` the same on paper. */
export function ChargeScreen({ model, rest }: { model: WalkModel; rest: readonly string[] }) {
  const charge = useCharge(model);
  const back = <ButtonLink href={walkPath(model.key, 'verdict')}>{verdict.title}</ButtonLink>;
  if (charge === undefined || charge === 'failed') {
    return (
      <Screen title={words.title} bar={back}>
        <p role="status">{charge === undefined ? common.loading : verdict.aheadFailed}</p>
      </Screen>
    );
  }
  return rest[1] === 'page' ? (
    <ChargePage model={model} charge={charge} />
  ) : (
    <Lines model={model} charge={charge} />
  );
}

function Lines({ model, charge }: { model: WalkModel; charge: Charge }) {
  const { list, input, contractKey } = charge;
  const seals = useSeals(model, 'records');
  // Until the seals are known nothing can be settled: a sealed walk stays as it was sealed.
  const sealed = seals === undefined || seals === 'failed' ? [] : seals.all;
  const fixed = seals === undefined || seals === 'failed' || sealed.length > 0;
  const signed = signedCharge(sealed);
  const of = (kind: 'charged' | 'not-charged') => list.lines.filter(({ standing }) => standing.kind === kind);
  const open = list.lines.filter(({ standing }) => standing.kind === 'open');
  const toSettle = open.filter(isToSettle);
  const missing = open.filter((line) => !isToSettle(line));
  const card = { walk: model.key, contract: input.contract, agreed: contractKey !== undefined, fixed };
  return (
    <Screen
      wide
      title={words.title}
      sub={model.machine.name}
      bar={
        <>
          <ButtonLink href={walkPath(model.key, 'verdict')}>{verdict.title}</ButtonLink>
          {sealed.length > 0 ? (
            <ButtonLink look="main" href={walkPath(model.key, 'charge.page')}>
              {words.page}
            </ButtonLink>
          ) : (
            <ButtonLink look="main" href={walkPath(model.key, 'seal')}>
              {words.sign}
            </ButtonLink>
          )}
        </>
      }
    >
      {signed && isAnew(list, signed) && (
        <p class={parts.fault}>{words.anew(signedSum(signed, formatter.value))}</p>
      )}
      <Answer charge={charge} />
      <Section title={words.charged}>
        {of('charged').length === 0 && <p>{words.nothingCharged}</p>}
        {of('charged').map((line) => (
          <ChargeCard key={line.id} line={line} {...card} />
        ))}
        <Sums charge={charge} />
      </Section>
      {toSettle.length > 0 && (
        <Section title={words.toSettle}>
          {toSettle.map((line) => (
            <ChargeCard key={line.id} line={line} {...card} />
          ))}
        </Section>
      )}
      {missing.length > 0 && (
        <Section title={words.missing}>
          {missing.map((line) => (
            <FoldedLine key={line.id} line={line} {...card} />
          ))}
        </Section>
      )}
      {of('not-charged').length > 0 && (
        <Section title={words.notCharged}>
          {of('not-charged').map((line) => (
            <FoldedLine key={line.id} line={line} {...card} />
          ))}
        </Section>
      )}
      <OwnerSide charge={charge} />
      <p class={styles.quiet}>{words.aid}</p>
      <ButtonLink look="plain" href={contractPath(model, 'charge')}>
        {contractKey === undefined ? words.enterContract : words.contract}
      </ButtonLink>
      <ButtonLink look="plain" href={walkPath(model.key, 'charge.page')}>
        {words.page}
      </ButtonLink>
    </Screen>
  );
}

/** The sum first, then what could change it. */
function Answer({ charge: { list, input, contractKey, contractGone } }: { charge: Charge }) {
  const format = formatter.value;
  const { contract } = input;
  const open = list.lines.filter(({ standing }) => standing.kind === 'open');
  const toSettle = open.filter(isToSettle).length;
  const money = (minor: number): string => format.money(minor, list.currency);
  const { taxPercent } = contract;
  return (
    <section>
      <p class={styles.sum} role="status">
        {list.grossMinor > 0
          ? words.toPay(money(list.grossMinor))
          : open.length > 0
            ? words.nothingYet
            : words.nothing}
      </p>
      {list.grossMinor > 0 && (
        <p>
          {taxPercent === undefined
            ? words.noTax
            : words.withTax(money(list.netMinor), format.percent(taxPercent), money(list.taxMinor))}
        </p>
      )}
      {toSettle > 0 && <p>{words.toSettleCount(toSettle)}</p>}
      {open.length > toSettle && <p>{words.openCount(open.length - toSettle)}</p>}
      {contractKey === undefined ? (
        <p>{contractGone ? words.contractGone : words.noContract}</p>
      ) : (
        <p>{contract.charges === 'damage' ? words.damageOnly : words.damageAndWear}</p>
      )}
      {list.handOut === undefined && <p>{words.noHandOut}</p>}
      {contract.charges === 'damage-and-wear' && <p>{hoursText(list, format)}</p>}
      {upFrontTexts(list, format).map((text) => (
        <p key={text}>{text}</p>
      ))}
      {list.otherGround !== undefined && <p>{words.otherGround(groundWords[list.otherGround])}</p>}
    </section>
  );
}

/** How the lines add up. */
function Sums({ charge: { list, input } }: { charge: Charge }) {
  const money = (minor: number): string => formatter.value.money(minor, list.currency);
  const { taxPercent } = input.contract;
  if (list.netMinor === 0) return null;
  return (
    <Facts
      facts={[
        [words.haulage, list.haulageMinor > 0 ? money(list.haulageMinor) : undefined],
        [words.net, money(list.netMinor)],
        taxPercent === undefined
          ? ['', undefined]
          : [words.tax(formatter.value.percent(taxPercent)), money(list.taxMinor)],
        [words.gross, money(list.grossMinor)],
      ]}
    />
  );
}

function OwnerSide({ charge: { list } }: { charge: Charge }) {
  const { ownerFaults } = list;
  return (
    <Section title={words.ownerSide}>
      {ownerFaults.length === 0 ? (
        <p>{words.ownerNone}</p>
      ) : (
        <>
          <p>{words.ownerSideLine}</p>
          <ul>
            {ownerFaults.map((fault) => (
              <li key={`${fault.place}${fault.item}${fault.foundAt}`}>{ownerText(fault, formatter.value)}</li>
            ))}
          </ul>
        </>
      )}
    </Section>
  );
}
