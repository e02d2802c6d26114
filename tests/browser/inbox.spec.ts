import { expect, type Page } from '@playwright/test';
import { keptOffline, test } from './fixtures.ts';
import { withoutReadings } from './walk-published.ts';

const walkFile = JSON.stringify({
  format: 'sagline-walk',
  version: 1,
  records: withoutReadings('steel'),
});

/** Posts files as the share sheet of the operating system does: a navigation of this form to this address. */
const share = (page: Page, files: readonly { name: string; text: string }[]): Promise<void> =>
  page.evaluate((all) => {
    const form = document.createElement('form');
    Object.assign(form, { action: '/inbox', method: 'post', enctype: 'multipart/form-data' });
    const input = document.createElement('input');
    Object.assign(input, { type: 'file', name: 'files', multiple: true });
    const list = new DataTransfer();
    for (const { name, text } of all) list.items.add(new File([text], name));
    input.files = list.files;
    form.append(input);
    document.body.append(form);
    form.submit();
  }, files);

test('[HA2] shared files wait in the inbox until they are taken in or left out', async ({
  page,
  origin,
  complaints,
}) => {
  await page.goto('/');
  await keptOffline(page);
  await origin.stop();
  await share(page, [
    { name: 'Ünser walk.json', text: walkFile },
    { name: 'other.json', text: 'not a walk' },
  ]);
  await expect(page.getByRole('heading', { name: 'Files for Sagline' })).toBeVisible();
  await page.getByRole('button', { name: 'Take in Ünser walk.json' }).click();
  await expect(page.getByText('3 records added')).toBeVisible();
  await page.reload();
  await expect(page.getByRole('button', { name: /Ünser/ })).toHaveCount(0);
  await page.getByRole('button', { name: 'Leave out other.json' }).click();
  await expect(page.getByText('No file is waiting here.')).toBeVisible();
  await page.reload();
  await expect(page.getByText('No file is waiting here.')).toBeVisible();
  expect(complaints).toEqual([]);
});

test('[HA1] files shared before the app was opened are said to be lost', async ({ page }) => {
  await page.goto('/robots.txt');
  await share(page, [{ name: 'walk.json', text: '{}' }]);
  await expect(page.getByText('share them once more')).toBeVisible();
});
