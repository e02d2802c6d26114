/** What the report of an appraisal holds besides, loaded when first wanted. */
export const loadAppraisal = () => import('../appraisal/report-sections.ts');
