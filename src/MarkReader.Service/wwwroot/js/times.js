// Times stand on a page in UTC; here they become the reader's own. The UTC time stays within reach.
export function localTimes(root) {
  for (const time of root.querySelectorAll("time[data-local]")) {
    const at = new Date(time.dateTime), two = (number) => String(number).padStart(2, "0");
    const day = `${at.getFullYear()}-${two(at.getMonth() + 1)}-${two(at.getDate())}`, clock = `${two(at.getHours())}:${two(at.getMinutes())}`;
    time.title = time.textContent;
    time.textContent = { clock, day, moment: `${day} ${clock}` }[time.dataset.local];
  }
}
