/** As a ref: a sheet that opens around this field puts the focus into it, as the dialog element does for `autofocus`,
 *  which React itself leaves out of the page. */
export function beginHere(element: HTMLElement | null): void {
  element?.setAttribute("autofocus", "");
}
