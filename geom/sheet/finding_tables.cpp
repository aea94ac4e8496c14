#include "geom/sheet/finding_tables.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "geom/site/finding_words.hpp"

namespace yardwright {

namespace {

std::string mends_in_words(const Finding& finding, UnitSystem units) {
  std::string text;
  for (const Mend& mend : finding.mends) text += (text.empty() ? "" : "; or ") + mend_words(mend, units);
  return text;
}

std::string tally(const Findings& findings, Question question) {
  std::string text;
  for (const Verdict verdict : {Verdict::fail, Verdict::caution, Verdict::not_checked, Verdict::pass}) {
    const auto count = std::ranges::count_if(
        findings, [&](const Finding& finding) { return finding.question == question && finding.verdict == verdict; });
    constexpr std::array words{"to mend", "to look at", "not checked", "pass"};
    if (count > 0)
      text += fmt::format("{}{} {}", text.empty() ? "" : " · ", count, words[static_cast<std::size_t>(verdict)]);
  }
  return text;
}

std::vector<TableCell> row_of(const Finding& finding, std::size_t number, UnitSystem units) {
  const std::string what = finding.note.empty() ? headline(finding) : headline(finding) + ": " + finding.note;
  return {{std::to_string(number), false, palette::quiet_ink, finding.verdict},
          {what, finding.verdict == Verdict::fail},
          {measured_words(finding, units)},
          {margin_words(finding, units), true, palette::of(finding.verdict)},
          {mends_in_words(finding, units)},
          {basis_words(finding), false, palette::quiet_ink}};
}

}  // namespace

std::string title_of(Question question) {
  std::string name{names_of(question)[static_cast<std::size_t>(question)]};
  name.front() = static_cast<char>(std::toupper(static_cast<unsigned char>(name.front())));
  return name;
}

std::string_view asked_by(Question question) {
  switch (question) {
    case Question::reach: return "Can every bin be filled by gravity from the leg?";
    case Question::turn: return "Do the trucks get in, dump and get out?";
    case Question::drain: return "Where does the rain go, and does it end in a pit?";
    case Question::clear: return "Are the distances kept to lines, lot edges, wells, tanks, dwellings and other bins?";
    case Question::pace: return "Does the yard keep up with the combine?";
    case Question::grow: break;
  }
  return "Where does the next bin go?";
}

std::vector<Table> finding_tables(const Findings& findings, UnitSystem units) {
  std::vector<Table> tables;
  for (const Question question : every_question) {
    Table table{title_of(question), std::string{asked_by(question)}, {}, {}};
    table.columns = {{"", 1.2},     {"finding", 4.6}, {"measured", 2.8}, {"margin", 2.2}, {"what would mend it", 4.2},
                     {"basis", 3.6}};
    for (std::size_t i = 0; i < findings.size(); ++i) {
      if (findings[i].question == question) table.rows.push_back(row_of(findings[i], i + 1, units));
    }
    if (table.rows.empty()) {
      table.columns = {{"", 1}};
      table.rows = {{{"This question gave no finding on this yard; it was not judged.", false, palette::quiet_ink,
                      Verdict::not_checked}}};
    } else {
      table.note += "  " + tally(findings, question);
    }
    tables.push_back(std::move(table));
  }
  return tables;
}

Table cautions_table() {
  const auto row = [](std::string about, std::string text) {
    return std::vector<TableCell>{{std::move(about), true, palette::ink, Verdict::caution}, {std::move(text)}};
  };
  Table table{"Before anybody builds",
              "This is a planning aid: no survey, no permit drawing, no design for construction.",
              {},
              {}};
  table.columns = {{"", 2.2}, {"", 8}};
  table.letter_mm = 3.2;
  table.rows = {
      row("Who decides",
          "Local code, the electric utility, the gas supplier and licensed practice decide. Where they ask for more "
          "than this plan, they are right."),
      row("Overhead lines",
          "Ask the utility before anything is placed, raised or driven near its lines. Augers, cranes and raised beds "
          "reach them. Heights on this plan are as typed, not measured."),
      row("Underground", "Have buried lines, tile and pipes located and marked before any digging."),
      row("Confined spaces",
          "Boot pits, dump pits, tunnels and bins are confined spaces: air tested, power locked out, someone outside, "
          "by permit where one is required."),
      row("Entrapment",
          "Nobody enters a bin while grain moves, and nobody enters alone or without a lifeline. Crusted or steep "
          "grain can bury a person in seconds."),
      row("Dust",
          "Grain dust explodes. Legs, tunnels and enclosed conveyors need housekeeping, bearing and belt monitoring, "
          "and relief as the standards ask."),
      row("Structure",
          "Foundations, towers, bin loads, catwalks, spout supports and pit walls, and an empty pit's uplift in wet "
          "ground, want a licensed engineer."),
      row("Electricity and fuel",
          "Wiring, motors, grounding, LP gas and ammonia want licensed trades and their own codes."),
  };
  return table;
}

}  // namespace yardwright
