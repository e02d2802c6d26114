import { isToLookAt, type PartFact } from '../../core/part-facts.ts';
import type { OrderLine } from '../../core/parts-to-order.ts';
import { factWords, ordering as words } from '../../words/en/ordering.ts';
import { countText, doubtTexts, factText, howText, partText, whyTexts } from '../../words/order-text.ts';
import { capital } from '../../words/outcome-text.ts';
import { formatter } from '../data/format.ts';
import { walkPath } from '../data/paths.ts';
import { preferences } from '../data/preferences.ts';
import { Button, ButtonLink, RowLink, RowText } from '../parts/button.tsx';
import { Fold } from '../parts/fold.tsx';
import forms from '../parts/forms.module.css';
import { LineChoices, useChoose } from './line-choices.tsx';
import type { OrderModel } from './use-order.ts';

export interface LineProps {
  readonly line: OrderLine;
  readonly order: OrderModel;
}

export const factPath = (order: OrderModel, line: OrderLine, { name }: PartFact): string =>
  walkPath(order.walk.key, `order.${line.id}.${name}`);

/** A part to order: how many, why, what is known of it, and what still has to be looked at. */
export function LineCard({ line, order }: LineProps) {
  if (line.out) return <LeftOut line={line} order={order} />;
  const { facts } = line;
  const open = facts.filter(isToLookAt);
  const [first] = open;
  return (
    <section class={forms.card} aria-label={partText(line)}>
      <h3>{partText(line)}</h3>
      <p>
        <strong>{words.howMany(countText(line, formatter.value))}</strong>
      </p>
      {whyTexts(line, formatter.value).map((why) => (
        <p key={why}>{why}</p>
      ))}
      {line.goesWith && <p class={forms.soft}>{words.goesWith}</p>}
      {line.onWornSprocket && <p class={forms.strong}>{words.wornSprocket}</p>}
      {first && <ButtonLink href={factPath(order, line, first)}>{words.lookNow(open.length)}</ButtonLink>}
      {facts.length > 0 && (
        <Fold title={words.facts} line={words.known(facts.length - open.length, facts.length)}>
          {facts.map((fact) => (
            <FactRow key={fact.name} fact={fact} href={factPath(order, line, fact)} />
          ))}
        </Fold>
      )}
      <LineChoices line={line} order={order} />
    </section>
  );
}

function FactRow({ fact, href }: { fact: PartFact; href: string }) {
  const value = factText(fact, formatter.value, preferences.value.length !== 'mm');
  return (
    <RowLink href={href}>
      <RowText
        name={capital(factWords[fact.name].name)}
        line={[value, howText(fact), ...doubtTexts(fact)].filter(Boolean).join(' · ')}
      />
    </RowLink>
  );
}

function LeftOut({ line, order }: LineProps) {
  const choose = useChoose(order, line);
  return (
    <section class={forms.card} aria-label={partText(line)}>
      <h3>{partText(line)}</h3>
      <p>{words.isOut}</p>
      <Button onTap={() => choose({ out: false })}>{words.putIn}</Button>
    </section>
  );
}
