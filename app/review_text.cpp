#include "app/review_text.h"

#include <QDate>

#include <fmt/format.h>

#include "app/check_report.h"
#include "app/html_text.h"
#include "app/page_style.h"
#include "core/checks/acceptance_check.h"
#include "core/checks/cautions.h"
#include "core/model/field_catalogue.h"

namespace jw {
namespace {

constexpr const char* kTable = "<table cellspacing=\"0\" cellpadding=\"0\" width=\"100%\">";

QString qt(const std::string& text) { return QString::fromStdString(text); }

QString row(const QString& left, const QString& middle, const QString& right) {
  return QString("<tr><td width=\"42%\">%1</td><td width=\"12%\">%2</td><td>%3</td></tr>")
      .arg(left, middle, right);
}

/// The value as a person reads it; a choice by its label.
std::string shownValue(const FieldRef& field) {
  const FieldInfo& info = *field.info;
  if (info.kind == FieldKind::Choice) {
    return std::string(info.choices[static_cast<std::size_t>(field.number())].label);
  }
  if (info.kind == FieldKind::Number && isSet(field.number())) {
    return formatQuantity(field.number(), info.quantity, info.unit, 6);
  }
  return fieldText(field);
}

bool isShown(const FieldRef& field) {
  const bool matters = field.info->applies == nullptr || field.info->applies(field.owner);
  return matters && !shownValue(field).empty();
}

QString fieldRow(const FieldRef& field) {
  return row(qt(htmlText(field.info->label)), qt(htmlSymbol(field.info->symbol)),
             qt(htmlText(shownValue(field))));
}

/// "Drive 2" for the second stage, "Move 1" for the first segment, "Motor" for the motor.
QString stationTitle(const FieldRef& field) {
  QString title = qt(htmlText(field.structInfo->title));
  const auto open = field.path.rfind('[');
  if (open != std::string::npos) {
    title += QString(" %1").arg(std::stoi(field.path.substr(open + 1)) + 1);
  }
  return title;
}

/// "accepted 2026-03-31: note" on a line of its own; nothing if nobody did.
QString acceptedLine(const Check& check) {
  const std::string text = acceptedText(check);
  return text.empty() ? QString() : "<br/><span class=\"muted\">" + qt(htmlText(text)) + "</span>";
}

QString workingHead(const Check& check) {
  const QString margin = check.state == CheckState::Open
                             ? QString()
                             : qt(htmlText(formatDemand(check) + " · " + formatMargin(check)));
  return QString("<h3>%1</h3><p>%2 &nbsp; %3%4</p>")
      .arg(qt(htmlText(check.title)), stateHtml(check.state), margin, acceptedLine(check));
}

constexpr int kPrinted = 6;  // digits enough to compute the working again

/// A symbol with its meaning, or a result, which has no symbol of its own.
QString symbolRow(const WorkingSymbol& symbol, bool isResult) {
  const std::string value = formatQuantity(symbol.value, symbol.quantity, symbol.unit, kPrinted);
  const QString origin = symbol.expression.empty() ? qt(htmlText(symbol.origin))
                                                   : "= " + qt(htmlSymbol(symbol.expression));
  const QString name = isResult
                           ? "<td colspan=\"2\">" + qt(htmlSymbol(symbol.symbol)) + "</td>"
                           : QString("<td width=\"11%\">%1</td><td width=\"34%\">%2</td>")
                                 .arg(qt(htmlSymbol(symbol.symbol)), qt(htmlText(symbol.label)));
  return QString(
             "<tr>%1<td width=\"24%\" align=\"right\" style=\"white-space:nowrap\">%2</td>"
             "<td width=\"31%\" class=\"muted\">%3</td></tr>")
      .arg(name, qt(htmlText(value)), origin);
}

QString mutedLine(const std::string& text) {
  return text.empty() ? QString() : "<p class=\"muted\">" + qt(htmlSymbol(text)) + "</p>";
}

QString workingBody(const Working& working) {
  QString html = QString("<p class=\"formula\">%1</p>").arg(qt(htmlSymbol(working.formula)));
  html += kTable;
  for (const WorkingSymbol& symbol : working.symbols) html += symbolRow(symbol, false);
  for (const WorkingSymbol& symbol : working.results) html += symbolRow(symbol, true);
  html += QString("</table><p><b>%1</b></p>").arg(qt(htmlSymbol(working.result)));
  if (!working.caution.empty()) html += "<p>" + qt(htmlSymbol(working.caution)) + "</p>";
  return html + mutedLine(working.source) + mutedLine(working.note);
}

QString workingBlock(const Review& review, const Check& check) {
  return workingHead(check) +
         workingBody(explain(*review.snapshot.project, *review.snapshot.evaluation, check));
}

QString figureBlock(const Review& review, const NamedQuantity& figure) {
  return QString("<h3>%1</h3>").arg(qt(htmlText(figure.label))) +
         workingBody(
             explainQuantity(*review.snapshot.project, *review.snapshot.evaluation, figure.id));
}

}  // namespace

QString reviewHead(const Review& review) {
  const Project& project = *review.snapshot.project;
  const std::string title = project.title.empty() ? "Design review" : project.title;
  const QString head =
      QString("<h1>%1</h1><p>Variant %2 · %3%4</p><p><b>%5</b></p>")
          .arg(qt(htmlText(title)), qt(htmlText(project.active().name)),
               QDate::currentDate().toString(Qt::ISODate),
               review.fileName.isEmpty() ? QString() : " · " + review.fileName.toHtmlEscaped(),
               qt(countStates(review.snapshot.evaluation->checks)));
  return project.note.empty() ? head : head + "<p>" + qt(htmlText(project.note)) + "</p>";
}

QString reviewVerdictList(const Review& review) {
  QString html = QString("<h2>Verdicts</h2>") + kTable;
  for (const Check* check : worstFirst(review.snapshot.evaluation->checks)) {
    const bool open = check->state == CheckState::Open;
    html += QString(
                "<tr><td>%1</td><td>%2</td><td align=\"right\">%3</td>"
                "<td align=\"right\">%4</td></tr>")
                .arg(stateHtml(check->state), qt(htmlText(check->title)) + acceptedLine(*check),
                     qt(open ? "an input is missing" : formatDemand(*check)),
                     qt(open ? "" : formatMargin(*check)));
  }
  return html + "</table>";
}

QStringList reviewRemarks(const Review& review) {
  QStringList blocks;
  const auto add = [&](const InputError& error) {
    blocks << "<p>" + qt(htmlText(describe(error))) + "</p>";
  };
  for (const InputError& error : review.snapshot.evaluation->missing) add(error);
  for (const Notice& notice : review.snapshot.evaluation->notices) add(notice.text);
  for (const InputError& note : review.notes) add(note);
  if (!blocks.isEmpty()) blocks.first().prepend("<h2>Remarks</h2>");
  return blocks;
}

QString reviewQuantities(const Review& review) {
  QString html = QString("<h2>Headline figures</h2>") + kTable;
  for (const NamedQuantity& q : review.snapshot.evaluation->quantities) {
    html +=
        QString("<tr><td>%1</td><td align=\"right\">%2</td></tr>")
            .arg(qt(htmlText(q.label)), qt(htmlText(formatQuantity(q.value, q.quantity, q.unit))));
  }
  return html + "</table>";
}

QStringList reviewInputs(const Review& review) {
  QStringList blocks;
  QString station;
  for (const FieldRef& field : allFields(*review.snapshot.project)) {
    if (field.structInfo == &structInfo<Project>() || !isShown(field)) continue;
    const QString title = stationTitle(field);
    if (title != station) {
      if (!blocks.isEmpty()) blocks.last() += "</table>";
      blocks << "<h3>" + title + "</h3>" + kTable;
      station = title;
    }
    blocks.last() += fieldRow(field);
  }
  if (!blocks.isEmpty()) {
    blocks.last() += "</table>";
    blocks.first().prepend("<h2>Inputs</h2>");
  }
  return blocks;
}

QStringList reviewWorkings(const Review& review) {
  QStringList blocks;
  for (const Check* check : worstFirst(review.snapshot.evaluation->checks)) {
    blocks << workingBlock(review, *check);
  }
  if (!blocks.isEmpty()) blocks.first().prepend("<h2>Working</h2>");
  return blocks;
}

QStringList reviewFigureWorkings(const Review& review) {
  QStringList blocks;
  for (const NamedQuantity& figure : review.snapshot.evaluation->quantities) {
    if (isSet(figure.value)) blocks << figureBlock(review, figure);
  }
  if (!blocks.isEmpty()) blocks.first().prepend("<h2>Working of the headline figures</h2>");
  return blocks;
}

QString reviewCautions() {
  QString html = "<h2>Cautions</h2>";
  for (const std::string_view caution : kCautions) {
    html += "<p>" + qt(htmlText(caution)) + "</p>";
  }
  return html;
}

}  // namespace jw
