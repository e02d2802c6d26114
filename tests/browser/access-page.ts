import type { Page } from '@playwright/test';

/** Something that a person could not tap, read or see, in words for whoever mends it. */
export type Fault = string;

/**
 * Targets smaller than `least` in either direction, pad keys smaller than 64, texts in fields smaller than 16 px,
 * and a page that scrolls sideways.
 */
export const tooSmall = (page: Page): Promise<readonly Fault[]> =>
  page.evaluate(() => {
    const [least, leastKey, leastText] = [48, 64, 16];
    const faults: string[] = [];
    const name = (each: Element): string =>
      `${each.tagName.toLowerCase()} “${(each.getAttribute('aria-label') ?? each.textContent).trim().slice(0, 40)}”`;
    for (const each of document.querySelectorAll(
      'a[href], button, input, select, textarea, summary, [role=button]',
    )) {
      // A file is chosen by tapping its label.
      const target = each.matches('[type=file]') ? (each.closest('label') ?? each) : each;
      const { x, width, height } = target.getBoundingClientRect();
      // What waits beside the screen until it has the focus is no target.
      if (width === 0 || x < -500) continue;
      const need = each.closest('[data-quick]') && each.matches('[class*=key]') ? leastKey : least;
      if (width < need - 0.5 || height < need - 0.5)
        faults.push(`${name(target)} is ${Math.round(width)} × ${Math.round(height)}`);
      const size = Number.parseFloat(getComputedStyle(each).fontSize);
      if (each.matches('input, select, textarea') && size < leastText)
        faults.push(`${name(each)} has a text of ${size} px`);
    }
    const { scrollWidth, clientWidth } = document.documentElement;
    if (scrollWidth > clientWidth) faults.push(`scrolls sideways by ${scrollWidth - clientWidth} px`);
    return faults;
  });

/** Texts whose contrast to what lies behind them is less than 7 to 1. */
export const tooPale = (page: Page): Promise<readonly Fault[]> =>
  page.evaluate(() => {
    const leastContrast = 7;
    type Colour = readonly [red: number, green: number, blue: number, alpha: number];
    const parse = (text: string): Colour => {
      const [red = 0, green = 0, blue = 0, alpha = 1] = (text.match(/[\d.]+/g) ?? []).map(Number);
      return [red, green, blue, alpha];
    };
    const light = (colour: Colour): number => {
      const [red = 0, green = 0, blue = 0] = colour.slice(0, 3).map((each) => {
        const share = each / 255;
        return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
      });
      return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
    };
    const behind = (element: Element | null): Colour => {
      for (let each = element; each !== null; each = each.parentElement) {
        const colour = parse(getComputedStyle(each).backgroundColor);
        if (colour[3] > 0.99) return colour;
      }
      return [255, 255, 255, 1];
    };
    const faults = new Set<string>();
    const texts = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    for (let node = texts.nextNode(); node !== null; node = texts.nextNode()) {
      const element = node.parentElement;
      const text = node.textContent?.trim() ?? '';
      if (element === null || text === '' || element.closest('[hidden], script, option, title') !== null)
        continue;
      const style = getComputedStyle(element);
      const colour = parse(element instanceof SVGElement ? style.fill : style.color);
      const [one, other] = [light(colour), light(behind(element))];
      const contrast = (Math.max(one, other) + 0.05) / (Math.min(one, other) + 0.05);
      if (contrast < leastContrast) faults.add(`“${text.slice(0, 40)}” has ${contrast.toFixed(1)} to 1`);
    }
    return [...faults];
  });

/** Controls that cannot be seen when they have the focus, since the bar at the bottom or something else lies over them. */
export const covered = (page: Page): Promise<readonly Fault[]> =>
  page.evaluate(() => {
    const faults: string[] = [];
    for (const each of document.querySelectorAll<HTMLElement | SVGElement>(
      'a[href], button, input, select, textarea, summary, [tabindex="0"]',
    )) {
      if (each.matches(':disabled, [type=file]') || each.getClientRects().length === 0) continue;
      each.focus();
      if (document.activeElement !== each) continue;
      const { x, y, width, height } = each.getBoundingClientRect();
      const top = document.elementFromPoint(x + width / 2, y + height / 2);
      // A tap beside a part of the map still falls on its zone.
      const isSeen =
        top !== null && (each.contains(top) || top.contains(each) || top.closest('label')?.contains(each));
      if (isSeen !== true)
        faults.push(
          `${each.tagName} “${(each.getAttribute('aria-label') ?? each.textContent).trim().slice(0, 40)}”`,
        );
    }
    return faults;
  });

/** Text of twice the size, as the browser's own setting makes it. */
export const setTextSize = (page: Page, share: number): Promise<void> =>
  page.evaluate((size) => void (document.documentElement.style.fontSize = `${size * 100}%`), share);
