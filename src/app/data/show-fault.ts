/** Brings what stands in the way of saving into view, once it is drawn. */
export function showFirstFault(): void {
  requestAnimationFrame(() => {
    document.querySelector<HTMLElement>('[data-fault],[aria-invalid="true"]')?.focus();
  });
}
