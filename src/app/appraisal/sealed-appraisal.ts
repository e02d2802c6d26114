import type { Json } from '../../core/canonical-json.ts';
import type { Outlook } from '../../core/outlook.ts';
import { appraisalJson } from '../../files/appraisal.ts';
import type { WalkModel } from '../data/walk-model.ts';
import { appraised } from './appraised.ts';

/** The appraisal of a walk as its seal holds it. */
export const sealedAppraisal = (model: WalkModel, outlook: Outlook): Json =>
  appraisalJson(appraised(model, outlook));
