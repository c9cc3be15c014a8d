/** Hands a text out as a file of the browser's own. */
export function saveText(name: string, text: string): void {
  const link = document.createElement("a");
  link.href = URL.createObjectURL(new Blob([text], { type: "text/csv;charset=utf-8" }));
  link.download = name;
  link.click();
  // The download has its own hold on the data once it has started.
  setTimeout(() => URL.revokeObjectURL(link.href), 10_000);
}
