#pragma once

// Private to this room: the style and the script of the page for a class. Pairs of --ink, --quiet, --asked,
// --caution and --link on --paper and --row have a contrast of at least 4.5 to 1 in both looks, which a
// test computes. What is lost differs by weight and words, the asked outline by dash and width; colour comes
// on top.

namespace dartwright::look {

inline constexpr const char* class_page_style = R"(
:root { color-scheme: light dark;
  --ink: #26221f; --quiet: #5a5146; --paper: #fcf9f1; --row: #f3ecdc; --line: #8a8072;
  --asked: #2f5274; --caution: #8c2d14; --link: #2f4a80; --cloth: #f0e7d5; }
@media (prefers-color-scheme: dark) { :root {
  --ink: #f2ecdf; --quiet: #c3b8a6; --paper: #26221f; --row: #302b27; --line: #9a9082;
  --asked: #a9c9e8; --caution: #f5b29b; --link: #b3c8f5; --cloth: #3a332d; } }
* { box-sizing: border-box; }
body { color: var(--ink); background: var(--paper); font: 1rem/1.5 'DejaVu Sans', Verdana, sans-serif;
  max-width: 70rem; margin: 0 auto; padding: 1rem; overflow-wrap: anywhere; }
h1 { font-size: 1.6rem; margin: 0; }
h2 { font-size: 1.25rem; margin: 2rem 0 .5rem; border-bottom: 1px solid var(--line); }
h3 { font-size: 1.05rem; margin: 1.2rem 0 .3rem; }
a { color: var(--link); }
:focus-visible { outline: 3px solid var(--link); outline-offset: 2px; }
.skip { position: absolute; left: -999rem; }
.skip:focus { position: static; }
.quiet { color: var(--quiet); }
.caution { border-left: .3rem solid var(--caution); padding-left: .8rem; }
.scroll { overflow-x: auto; overflow-wrap: normal; margin: .5rem 0;
  background: linear-gradient(to right, var(--paper) 40%, transparent) left / 3rem 100% no-repeat local,
    linear-gradient(to left, var(--paper) 40%, transparent) right / 3rem 100% no-repeat local,
    linear-gradient(to right, var(--line), transparent) left / .7rem 100% no-repeat scroll,
    linear-gradient(to left, var(--line), transparent) right / .7rem 100% no-repeat scroll; }
table { border-collapse: collapse; }
caption { text-align: left; color: var(--quiet); padding-bottom: .4rem; }
caption span { display: block; position: sticky; left: 0; max-width: min(44rem, calc(100vw - 2rem)); }
th, td { text-align: left; vertical-align: top; padding: .3rem .7rem; border-bottom: 1px solid var(--line); }
thead th { border-bottom: 2px solid var(--line); vertical-align: bottom; }
tbody th { font-weight: normal; }
tr.task th { background: var(--row); font-weight: bold; }
.number { text-align: right; font-variant-numeric: tabular-nums; white-space: nowrap; }
.said { text-align: right; min-width: 10rem; }
thead th.number { white-space: normal; }
.brief { display: none; }
.again { display: none; }
.lost { font-weight: bold; color: var(--caution); }
.part { text-decoration: underline; text-decoration-style: dotted; text-underline-offset: .25em; }
th button { font: inherit; font-weight: bold; color: inherit; background: none; border: 1px solid transparent;
  border-radius: .3rem; padding: .1rem .2rem; margin: -.1rem -.2rem; text-align: inherit; cursor: pointer; }
th button:hover { border-color: var(--line); }
th button::after { content: '\2195'; padding-left: .3rem; }
th[aria-sort=ascending] button::after { content: '\2191'; }
th[aria-sort=descending] button::after { content: '\2193'; }
#marks tbody th, #marks thead th:first-child { position: sticky; left: 0; background: var(--paper); }
tbody th { min-width: 8rem; }
.words { min-width: 14rem; }
figure { margin: .8rem 0; }
.pieces { display: flex; flex-wrap: wrap; gap: 1rem; align-items: flex-start; }
.pieces figure { flex: 1 1 16rem; max-width: 30rem; }
svg { display: block; max-width: 100%; }
.overlay { width: 100%; height: auto; max-height: 26rem; }
.overlay text { font-family: inherit; fill: var(--paper); font-weight: bold; text-anchor: middle; }
.found { fill: var(--cloth); stroke: var(--ink); stroke-width: 3; stroke-linejoin: round; }
.asked { fill: none; stroke: var(--asked); stroke-width: 1.5; stroke-dasharray: 7 4; stroke-linejoin: round; }
.found, .asked { vector-effect: non-scaling-stroke; }
.tag { fill: var(--caution); stroke: var(--paper); stroke-width: 1.5; vector-effect: non-scaling-stroke; }
.key svg { display: inline-block; vertical-align: middle; width: 3rem; height: .8rem; }
.spread { width: 18rem; max-width: none; height: auto; }
.spread text { font-family: inherit; font-size: 13px; fill: var(--ink); text-anchor: middle; }
.spread rect { fill: var(--asked); }
.spread .axis { stroke: var(--ink); stroke-width: 1; }
.spread .rung { stroke: var(--line); stroke-width: 1; stroke-dasharray: 2 2; }
.columns { columns: 20rem; }
.back { margin-top: 1rem; }
@media (max-width: 40rem) { body { padding: .6rem; } th, td { padding: .25rem .4rem; } h1 { font-size: 1.3rem; } }
@media screen and (max-width: 40rem) {
  .cards, .cards caption, .cards tbody, .cards tr, .cards th, .cards td { display: block; min-width: 0; }
  .cards thead { display: none; }
  .cards td { text-align: left; white-space: normal; }
  .cards td, .cards tbody th { border-bottom: 0; }
  .cards tr { border-bottom: 1px solid var(--line); }
  .cards tbody th { font-weight: bold; }
  .cards td::before { content: attr(data-column) ': '; color: var(--quiet); }
}
@media print {
  :root { color-scheme: light; --ink: #000; --quiet: #333; --paper: #fff; --row: #eee; --line: #777;
    --asked: #000; --caution: #000; --link: #000; --cloth: #f2f2f2; }
  body { max-width: none; padding: 0; font-size: 9pt; }
  nav, .skip, .back { display: none; }
  th button::after { content: none; }
  .calm { display: none; }
  .brief, .again { display: table-row; }
  .scroll { overflow: visible; background: none; }
  tbody th, .words, .said { min-width: 0; }
  caption span { max-width: none; }
  #marks tbody th, #marks thead th:first-child { position: static; }
  th, td { padding: .15rem .35rem; }
  tr, li, figure, .caution { break-inside: avoid; }
  h2, h3, tr.task { break-after: avoid; }
  .spread { width: 11rem; }
  .student { break-before: page; }
  /* A heading and the head of a table are not kept with its first row everywhere. */
  h3.lines { break-before: page; }
  .overlay { max-height: 95mm; }
  a { text-decoration: none; }
}
@page { size: A4; margin: 14mm;
  @bottom-right { content: "page " counter(page) " of " counter(pages); font: 8pt sans-serif; } }
)";

inline constexpr const char* class_page_script = R"(
for (const table of document.querySelectorAll('table.sorted')) {
  const heads = [...table.tHead.rows[0].cells], body = table.tBodies[0];
  const value = (row, i) => row.cells[i].dataset.value ?? row.cells[i].textContent;
  heads.forEach((head, i) => {
    const button = document.createElement('button');
    button.type = 'button';
    button.append(...head.childNodes);
    head.append(button);
    button.addEventListener('click', () => {
      const up = head.getAttribute('aria-sort') !== 'ascending';
      for (const other of heads) other.removeAttribute('aria-sort');
      head.setAttribute('aria-sort', up ? 'ascending' : 'descending');
      const order = (a, b) => i < 1 ? value(a, i).localeCompare(value(b, i)) : value(a, i) - value(b, i);
      body.append(...[...body.rows].sort((a, b) => up ? order(a, b) : order(b, a)));
    });
  });
}
)";

/// The SHA-256 of the script, by which the page allows it and no other; a test computes it anew.
inline constexpr const char* class_page_script_hash = "sha256-c/sRH6HVtlb+F4WNeAL3AwFuiOW76ePA9r33FMzpVb0=";

}  // namespace dartwright::look
