import { it } from 'vitest';
import { closeBrowser, openEmptyHome } from './empty-home.ts';
import { byMouse } from './hands.ts';
import * as steps from './mill-return-steps.ts';
import { makeDaybook } from './run-steps.ts';
it('probe', async () => {
  const home = await openEmptyHome();
  const { page } = home;
  const by = byMouse(page);
  try {
    await makeDaybook(page, by, 'Walk mill');
    await steps.registers(page, by);
    await page.evaluate(() => { location.hash = '#/retort/new/receipt'; });
    await steps.reading(page, 'Mercury, net').waitFor();
    console.log('receipt unit', await page.getByRole('combobox', { name: /^Unit of Reading/ }).first().inputValue());
    await page.evaluate(() => { location.hash = '#/retort/new/clean-up'; });
    await page.getByLabel('Unit of row 1').waitFor();
    console.log('clean-up unit', await page.getByLabel('Unit of row 1').inputValue());
    await page.evaluate(() => { location.hash = '#/retort/new/charge'; });
    await page.waitForTimeout(500);
    await steps.parcel(page, by, 'North parcel');
    await steps.crush(page, by, { amount: '12 long-ton', parcel: 'North parcel' });
    await steps.button(page, 'Keep').click();
    await page.getByText(/^Kept · entry/).waitFor();
    await steps.crush(page, by, { amount: '13 long-ton', parcel: 'North parcel' });
    await steps.button(page, 'Keep').click();
    await page.getByText('Nothing was kept.').waitFor();
    console.log('invalid', await page.locator('[aria-invalid="true"]').count(), 'focus', await page.evaluate(() => document.activeElement?.outerHTML.slice(0, 120)));
    // estimate of nothing in ounces
    await steps.writeUp(page, by, 'Stock-take');
    for (const [place, mass] of [['pan (in circuit)', '0 ozt']]) {
      const row = page.getByRole('group', { name: place, exact: true });
      await by.choose(steps.choice(row, 'Answer'), 'Estimated');
      await by.write(steps.text(row, 'Mercury, estimated'), mass ?? '');
      await by.write(steps.text(row, 'Method of estimating'), 'none');
    }
    await steps.button(page, 'Keep').click();
    await page.waitForTimeout(800);
    const f = steps.text(page.getByRole('group', { name: 'pan (in circuit)', exact: true }), 'Mercury, estimated');
    console.log('estimate 0 ozt invalid', await f.getAttribute('aria-invalid'), await page.locator(`#${await f.getAttribute('aria-describedby')}`).textContent());
    console.log('unit default of estimate', await page.getByRole('combobox', { name: 'Unit of Mercury, estimated' }).first().inputValue());
    console.log('faults', home.faults);
  } finally { await home.close(); await closeBrowser(); }
});
