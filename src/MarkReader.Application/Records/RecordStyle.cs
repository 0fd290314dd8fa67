namespace MarkReader.Application.Records;

/// <summary>The style sheet of a record's HTML.</summary>
internal static class RecordStyle
{
    public const string Text = """
        @page { margin: 16mm 16mm 18mm; }
        :root { color-scheme: light; --ink: #141c20; --soft: #556066; --line: #c4cacc; }
        * { box-sizing: border-box; }
        body { margin: 0; background: #fff; color: var(--ink); font: 15px/1.45 "DejaVu Sans Condensed", "Segoe UI", Roboto, "Noto Sans", system-ui, sans-serif; font-variant-numeric: tabular-nums; }
        main, footer { max-width: 60rem; margin: 0 auto; padding: 0 1.25rem; }
        header { padding-top: 1.5rem; }
        h1 { margin: 0; font-size: 1.9rem; line-height: 1.2; }
        .subtitle { margin: .25rem 0 1.25rem; color: var(--soft); overflow-wrap: anywhere; }
        h2 { margin: 2rem 0 .6rem; font-size: 1.2rem; break-after: avoid; }
        p { margin: .4rem 0; overflow-wrap: anywhere; white-space: pre-line; }
        .note { color: var(--soft); font-size: .85rem; }
        .banner { margin: 0 0 1.25rem; padding: .9rem 1.1rem; border-left: 6px solid var(--ink); background: #f1f3f3; break-inside: avoid; }
        .banner .word { margin: 0 0 .3rem; font-size: 1.3rem; font-weight: 700; }
        .good { border-color: #17603a; background: #eef6f1; } .good .word { color: #17603a; }
        .bad { border-color: #a01818; background: #fcf0ef; } .bad .word { color: #a01818; }
        .open { border-color: #8a5a00; background: #fdf6e6; } .open .word { color: #8a5a00; }
        dl { display: grid; grid-template-columns: minmax(7rem, max-content) 1fr; gap: .25rem 1.25rem; margin: 0; }
        dt { color: var(--soft); }
        dd { margin: 0; overflow-wrap: anywhere; white-space: pre-line; }
        .table { overflow-x: auto; }
        table { width: 100%; border-collapse: collapse; margin: .4rem 0 .6rem; font-size: .92rem; }
        caption { text-align: left; font-weight: 700; padding-bottom: .25rem; }
        thead { display: table-header-group; }
        th { text-align: left; vertical-align: bottom; border-bottom: 1.5px solid var(--ink); padding: .25rem .5rem .25rem 0; font-size: .86rem; white-space: nowrap; }
        th .unit { display: block; font-weight: 400; color: var(--soft); }
        td { vertical-align: top; border-bottom: 1px solid var(--line); padding: .25rem .5rem .25rem 0; white-space: nowrap; }
        td.wide { white-space: normal; overflow-wrap: anywhere; min-width: 10rem; }
        .number { text-align: right; }
        th:last-child, td:last-child { padding-right: 0; }
        tr { break-inside: avoid; }
        del { color: var(--soft); }
        ul { margin: .4rem 0; padding-left: 1.2rem; }
        li { margin: .3rem 0; }
        figure { margin: 0; break-inside: avoid; }
        img { max-width: 100%; height: auto; display: block; }
        .pictures img { width: 100%; max-height: 32rem; object-fit: contain; object-position: left top; }
        .photos, .pictures { display: grid; grid-template-columns: repeat(2, minmax(0, 1fr)); gap: 1.1rem; }
        .photos img { max-height: 24rem; object-fit: contain; object-position: left top; }
        figcaption { font-size: .85rem; margin-top: .3rem; overflow-wrap: anywhere; }
        .signature { break-inside: avoid; margin-bottom: 2rem; }
        .lines { align-items: end; max-width: 34rem; }
        .lines dt { color: var(--ink); }
        .lines dd { border-bottom: 1px solid var(--ink); min-height: 2.6rem; display: flex; align-items: end; }
        footer { color: var(--soft); font-size: .8rem; padding-bottom: 2rem; }
        @media (max-width: 36rem) {
          .photos, .pictures { grid-template-columns: 1fr; }
          .table table, .table tbody, .table tr, .table td, .table caption { display: block; }
          .table thead { display: block; position: absolute; width: 1px; height: 1px; overflow: hidden; clip-path: inset(50%); }
          .table tr { border-bottom: 1.5px solid var(--line); padding: .3rem 0; }
          .table td { display: grid; grid-template-columns: minmax(7rem, 42%) 1fr; gap: .6rem; border: 0; padding: .1rem 0; min-width: 0; text-align: left; white-space: normal; overflow-wrap: anywhere; }
          .table td::before { content: attr(data-head); color: var(--soft); }
        }
        @media print {
          body { font-size: 9.5pt; }
          main, footer { max-width: none; padding: 0; }
          .table { overflow: visible; }
          .banner { print-color-adjust: exact; -webkit-print-color-adjust: exact; }
          .photos, .pictures { grid-template-columns: repeat(2, minmax(0, 1fr)); }
          .photos img { max-height: 68mm; }
          .pictures img { max-height: 86mm; }
        }
        """;
}
