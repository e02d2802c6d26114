import type { Outlook } from '../../core/outlook.ts';
import { appraisalSection } from '../../report/appraisal-section.ts';
import type { Block } from '../../report/blocks.ts';
import { formatter } from '../data/format.ts';
import type { WalkModel } from '../data/walk-model.ts';
import { appraised } from './appraised.ts';

/** What the report of an appraisal walk holds besides. */
export const reportSections = (model: WalkModel, outlook: Outlook): readonly Block[] =>
  appraisalSection({ appraisal: appraised(model, outlook), outlook, format: formatter.value });
