import { answersOf } from '../../words/purpose-answers.ts';
import { reasonText } from '../data/describe.ts';
import { formatter } from '../data/format.ts';
import type { WalkModel } from '../data/walk-model.ts';

/** What the walk's purpose asks first, answered in the words that whoever signs has read. */
export function sealedAnswers(model: WalkModel) {
  const format = formatter.value;
  const answers = answersOf({ ...model, format, reasonText: (reason) => reasonText(reason, format) });
  return {
    purpose: model.walk.purpose,
    language: 'en',
    answers: answers.map(({ ask, say, more }) => ({ ask, say, ...(more !== undefined && { more }) })),
  };
}
