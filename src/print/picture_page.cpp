// The page: the answer in words, the picture, a line of words for the bar in focus, and the printed
// twin.
#include <fmt/format.h>

#include "print/chance_words.h"
#include "print/picture_parts.h"
#include "print/say_parts.h"
#include "print/tokens.h"

namespace print {
namespace {

std::string page_style() {
  std::string css = fmt::format(
      ":root{{--ink:{};--soft:{};--paper:{};--card:{};--rule:{};--edge:{}}}"
      "*{{box-sizing:border-box}}html{{background:var(--paper);color:var(--ink);font:16px/1.4 "
      "{};font-variant-numeric:tabular-nums}}"
      "body{{margin:0;padding:18px 18px "
      "90px}}h1,h2,caption{{font-family:{};font-weight:600;line-height:1.2}}"
      "h1{{font-size:31px;margin:0 0 6px}}h2{{font-size:20px;margin:26px 0 "
      "6px}}.fits{{color:{}}}.over{{color:{}}}",
      token::kInk, token::kSoft, token::kPaper, token::kCard, token::kRule, token::kEdge,
      token::kText, token::kHead, token::kLeaf, token::kEmber);
  css +=
      "p{margin:0 0 "
      "4px;max-width:75ch}.soft{color:var(--soft)}.top{display:flex;gap:32px;justify-content:space-"
      "between;flex-wrap:wrap}"
      "ul,ol{margin:0 0 8px;padding-left:22px;max-width:75ch}.why "
      "li{font-weight:600}figure{margin:12px -18px;overflow-x:auto}svg{display:block}"
      "#said{position:fixed;left:0;right:0;bottom:0;margin:0;max-width:none;padding:12px "
      "18px;min-height:48px;background:var(--card);"
      "border-top:2px solid var(--ink);font-size:18px}"
      "table{border-collapse:collapse;margin:22px 0;background:var(--card);font-size:15px}"
      "caption{text-align:left;font-size:18px;padding:0 0 4px;background:var(--paper)}"
      "th,td{text-align:left;vertical-align:top;padding:4px 14px 4px 8px;border-top:1px solid "
      "var(--rule)}"
      "thead th{border-top:2px solid var(--ink);font-weight:600}tbody "
      "th{font-weight:700;white-space:nowrap}"
      "@media "
      "print{html{background:#fff;font-size:11pt}#said{display:none}body{padding:0}figure{margin:0;"
      "overflow:visible}"
      "figure "
      "svg{width:100%;height:auto}table{font-size:10pt}tr{break-inside:avoid}caption{break-after:"
      "avoid;background:#fff}"
      "h1,.fits,.over{color:#000}@page{size:A4 landscape;margin:12mm}}";
  return css;
}

/// Without the script every bar is reached by the tab key; with it by tab to a row, then by the
/// arrow keys.
constexpr std::string_view kScript = R"js(
(() => {
  const said = document.getElementById('said');
  const rest = said.textContent;
  const bars = [...document.querySelectorAll('svg .bar')];
  const rows = [];
  for (const bar of bars) {
    const last = rows[rows.length - 1];
    if (last && last[0].parentNode === bar.parentNode && bar.parentNode.tagName === 'g') last.push(bar); else rows.push([bar]);
  }
  for (const row of rows) row.forEach((bar, i) => bar.setAttribute('tabindex', i ? -1 : 0));
  const show = (event) => {
    const mark = event.target.closest('svg [aria-label]');
    said.textContent = mark ? mark.getAttribute('aria-label') : rest;
  };
  document.addEventListener('focusin', show);
  document.addEventListener('pointerover', show);
  document.addEventListener('keydown', (event) => {
    const r = rows.findIndex((row) => row.includes(document.activeElement));
    if (r < 0) return;
    const i = rows[r].indexOf(document.activeElement);
    const x = (bar) => bar.getBoundingClientRect().left;
    const near = (row) => row && row.reduce((a, b) => Math.abs(x(b) - x(rows[r][i])) < Math.abs(x(a) - x(rows[r][i])) ? b : a);
    const to = { ArrowRight: rows[r][i + 1], ArrowLeft: rows[r][i - 1], ArrowDown: near(rows[r + 1]), ArrowUp: near(rows[r - 1]) }[event.key];
    if (to) { event.preventDefault(); to.focus(); }
  });
})();
)js";

std::string items(const char* list, const char* classes, const std::vector<std::string>& lines) {
  std::string out = fmt::format("<{} class=\"{}\">", list, classes);
  for (const std::string& line : lines) out += "<li>" + escaped(line) + "</li>";
  return out + fmt::format("</{}>\n", list);
}

std::string paragraph(const std::string& text, const char* classes = "") {
  return text.empty() ? "" : fmt::format("<p class=\"{}\">{}</p>\n", classes, escaped(text));
}

std::string remedies(const Answer& answer) {
  if (answer.remedies.empty()) return "";
  std::vector<std::string> lines;
  for (const timeplan::Remedy& r : answer.remedies) {
    lines.push_back(stopped(r.says) + (r.buys.empty() ? "" : " " + stopped(capital(r.buys))));
  }
  return "<h2>What would help</h2>\n" + items("ol", "", lines) +
         paragraph("Each was checked by planning again.", "soft");
}

std::string head(const kitchen::Lesson& lesson, const Answer& answer) {
  const bool fits = answer.verdict == timeplan::Verdict::kFits;
  std::string out = fmt::format("<div class=\"top\"><header>\n<h1 class=\"{}\">{}</h1>\n",
                                fits ? "fits" : "over", escaped(verdict_words(lesson, answer)));
  if (!fits) {
    std::vector<std::string> causes;
    for (const timeplan::Cause& cause : answer.causes) causes.push_back(stopped(cause.says));
    if (!causes.empty()) out += items("ul", "why", causes);
    out += remedies(answer);
  }
  out += paragraph(trials_words(answer)) + paragraph(lesson_words(lesson));
  const std::optional<Likely> chance = likely(lesson, answer);
  if (chance) {
    out += paragraph(chance->whole);
    for (const std::string& says : chance->says) out += paragraph(says, "soft");
  }
  if (fits) out += remedies(answer);
  return out + "</header>" + marks_svg(lesson, answer) + "</div>\n";
}

std::string details(const kitchen::Lesson& lesson, const Answer& answer) {
  std::string out = "<details><summary>The figures behind the plan</summary><dl>\n";
  for (const auto& [name, figures] : detail_lines(lesson, answer)) {
    out += "<dt>" + escaped(name) + "</dt><dd>" + escaped(figures) + "</dd>\n";
  }
  return out + "</dl></details>\n";
}

}  // namespace

std::string picture_html(const kitchen::Lesson& lesson, const timeplan::Answer& answer,
                         const PictureOptions& options) {
  std::string out = fmt::format(
      "<!doctype html>\n<html lang=\"en-GB\"><head><meta charset=\"utf-8\"><meta name=\"viewport\" "
      "content=\"width=device-width,initial-scale=1\"><title>{}</title>\n<style>{}</style></"
      "head><body>\n",
      escaped(lesson.title.empty() ? "Time plan" : lesson.title + ", time plan"), page_style());
  out += head(lesson, answer);
  if (answer.plan) {
    out += "<main>\n<figure>" + picture(lesson, answer, options, false) + "</figure>\n";
    out +=
        "<p id=\"said\" role=\"status\">Point at a bar, or go to it with the tab and arrow keys, "
        "and it is said here.</p>\n";
    out += "<h2>The same in words</h2>\n" + tables(lesson, answer) + "</main>\n";
  }
  if (!answer.notes.empty()) out += "<h2>Notes</h2>\n" + items("ul", "", answer.notes);
  out += details(lesson, answer) + "<footer>" + paragraph(caution_words(), "soft") + "</footer>\n";
  if (answer.plan) out += "<script>" + std::string(kScript) + "</script>\n";
  return out + "</body></html>\n";
}

}  // namespace print
