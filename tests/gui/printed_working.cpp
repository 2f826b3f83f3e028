#include "tests/gui/printed_working.h"

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <limits>
#include <stdexcept>
#include <string>
#include <vector>

#include <QRegularExpression>

#include <muParser.h>
#include <udunits2.h>

namespace jw::test {
namespace {

/// "×10⁻¹⁷" -> "e-17".
QString withPlainExponent(QString number) {
  const qsizetype at = number.indexOf(QStringLiteral("×10"));
  if (at < 0) return number;
  const QString raised = QStringLiteral("⁰¹²³⁴⁵⁶⁷⁸⁹⁻");
  QString exponent;
  for (const QChar c : number.mid(at + 3))
    exponent += QStringLiteral("0123456789-")[raised.indexOf(c)];
  return number.left(at) + u'e' + exponent;
}

}  // namespace

double unitScale(QString unit) {
  if (unit.isEmpty() || unit == QStringLiteral("°C")) return 1;
  static ut_system* const kSystem = [] {
    ut_set_error_message_handler(&ut_ignore);
    return ut_read_xml(nullptr);
  }();
  unit.replace(u'·', u'.').replace(QStringLiteral("²"), QStringLiteral("2"));
  unit.replace(QStringLiteral("Ω"), QStringLiteral("ohm")).replace(u'°', QStringLiteral("degree"));
  if (unit == QStringLiteral("Ah")) unit = QStringLiteral("A.h");
  if (unit == QStringLiteral("kWh")) unit = QStringLiteral("kW.h");
  if (unit == QStringLiteral("Wh")) unit = QStringLiteral("W.h");
  ut_unit* read = ut_parse(kSystem, unit.toUtf8().constData(), UT_UTF8);
  if (read == nullptr) throw std::runtime_error("no unit: " + unit.toStdString());
  char text[200];
  if (ut_format(read, text, sizeof text, UT_ASCII | UT_DEFINITION) < 0) text[0] = '\0';
  ut_free(read);
  char* end = nullptr;
  const double scale = std::strtod(text, &end);
  return end == text ? 1 : scale;
}

PrintedValue readPrinted(QString text) {
  constexpr int kDigits = 6;
  if (text.endsWith(u'°') && !text.contains(u' ')) text.insert(text.size() - 1, u' ');
  const qsizetype blank = text.indexOf(u' ');
  const double scale = unitScale(blank < 0 ? QString() : text.mid(blank + 1));
  QString number = blank < 0 ? text : text.left(blank);
  number.remove(QChar(0x2009)).replace(QChar(0x2212), u'-').replace(QStringLiteral("∞"), "inf");
  number = withPlainExponent(number);
  bool ok = false;
  double value = number.toDouble(&ok);
  if (!ok && number == QStringLiteral("inf"))
    value = std::numeric_limits<double>::infinity();
  else if (!ok)
    throw std::runtime_error("no number: " + text.toStdString());
  const double step = value == 0 || std::isinf(value)
                          ? 0
                          : std::pow(10.0, std::floor(std::log10(std::abs(value))) - (kDigits - 1));
  return {value * scale, 0.5 * step * scale};
}

namespace {

/// One printed line "symbol = expression = value"; the expression may be missing.
struct PrintedStep {
  QString symbol;
  QString expression;
  PrintedValue value;
};

std::vector<PrintedStep> readSteps(const QString& plain) {
  std::vector<PrintedStep> steps;
  for (QString line : plain.split(u'\n')) {
    const bool result = line.startsWith("Demand = ") || line.startsWith("Capacity = ") ||
                        line.startsWith("Result = ");
    const qsizetype remark = line.indexOf(QStringLiteral("  ("));
    if (!result && remark < 0) continue;
    if (remark >= 0) line = line.left(remark);
    const QStringList parts = line.split(QStringLiteral(" = "));
    if (parts.size() < 2 || parts.last() == QStringLiteral("–")) continue;
    if (parts.last().startsWith(QStringLiteral("– "))) continue;
    steps.push_back(
        {parts.first(), parts.size() > 2 ? parts[1] : QString(), readPrinted(parts.last())});
  }
  return steps;
}

/// Trade notation -> muParser: |x| is abs(x), √( is sqrt(, · is *, powers with ^; each symbol gets
/// a plain name.
std::string translated(QString text, const std::map<QString, QString>& names) {
  std::vector<QString> longestFirst;
  for (const auto& [symbol, name] : names) longestFirst.push_back(symbol);
  std::sort(longestFirst.begin(), longestFirst.end(),
            [](const QString& a, const QString& b) { return a.size() > b.size(); });
  QString out;
  for (qsizetype i = 0; i < text.size();) {
    const auto found =
        std::find_if(longestFirst.begin(), longestFirst.end(), [&](const QString& s) {
          const QChar before = i > 0 ? text[i - 1] : u' ';
          const QChar after = i + s.size() < text.size() ? text[i + s.size()] : u' ';
          const bool power = after == u'²' || after.category() == QChar::Number_Other;
          return text.mid(i, s.size()) == s && !before.isLetter() &&
                 (power || !(after.isLetterOrNumber() || after == u'_' || after == u'('));
        });
    if (found == longestFirst.end()) {
      out += text[i++];
    } else {
      out += names.at(*found);
      i += found->size();
    }
  }
  out.replace(QStringLiteral("√("), QStringLiteral("sqrt(")).replace(u'·', u'*');
  out.replace(QChar(0x2212), u'-').replace(QStringLiteral("²"), QStringLiteral("^2"));
  out.replace(QStringLiteral("10⁶"), QStringLiteral("10^6")).replace(u'π', QStringLiteral("_pi"));
  out.replace(QStringLiteral("∞"), QStringLiteral("inf"));
  static const QRegularExpression kSize(QStringLiteral("\\|([^|]*)\\|"));
  out.replace(kSize, QStringLiteral("abs(\\1)"));
  return out.toStdString();
}

/// An expression over printed values: what it gives, and how far the printed digits leave that open
/// (sum of the changes when each value moves by half a unit of its last digit).
PrintedValue evaluated(const QString& expression, const std::vector<PrintedStep>& known) {
  std::map<QString, QString> names;
  std::vector<double> values(known.size());
  double infinity = std::numeric_limits<double>::infinity();
  mu::Parser parser;
  parser.DefineVar("inf", &infinity);
  for (std::size_t k = 0; k < known.size(); ++k) {
    values[k] = known[k].value.value;
    names[known[k].symbol] = QStringLiteral("x%1").arg(k);
    parser.DefineVar("x" + std::to_string(k), &values[k]);
  }
  parser.SetExpr(translated(expression, names));
  PrintedValue found{parser.Eval(), 0};
  for (std::size_t k = 0; k < known.size(); ++k) {
    if (std::isinf(values[k])) continue;
    double change = 0;
    for (const double side : {-1.0, 1.0}) {
      values[k] = known[k].value.value + side * known[k].value.half;
      change = std::max(change, std::abs(parser.Eval() - found.value));
    }
    values[k] = known[k].value.value;
    if (std::isfinite(change)) found.half += change;
  }
  return found;
}

bool agrees(const PrintedValue& a, double b, double half) {
  if (std::isinf(a.value) || std::isinf(b)) return a.value == b;
  const double rounding = 1e-9 * std::max(std::abs(a.value), std::abs(b));
  return std::abs(a.value - b) <= 1.01 * (a.half + half) + rounding;
}

}  // namespace

QStringList recompute(const QString& plain, const std::map<QString, double>& truth) {
  QStringList wrong;
  std::vector<PrintedStep> known;
  std::map<QString, bool> met;
  try {
    for (const PrintedStep& step : readSteps(plain)) {
      if (!step.expression.isEmpty()) {
        const PrintedValue found = evaluated(step.expression, known);
        if (!agrees(found, step.value.value, step.value.half))
          wrong << QStringLiteral("%1 = %2 gives %3, printed is %4")
                       .arg(step.symbol, step.expression)
                       .arg(found.value)
                       .arg(step.value.value);
        const auto wanted = truth.find(step.symbol);
        if (wanted != truth.end()) {
          met[step.symbol] = true;
          if (!agrees(found, wanted->second, 0))
            wrong << QStringLiteral("%1 = %2 gives %3, the program says %4")
                         .arg(step.symbol, step.expression)
                         .arg(found.value, 0, 'g', 10)
                         .arg(wanted->second, 0, 'g', 10);
        }
      }
      known.push_back(step);
    }
  } catch (const mu::Parser::exception_type& error) {
    wrong << QString::fromStdString(error.GetMsg() + " in " + error.GetExpr());
  } catch (const std::runtime_error& error) {
    wrong << QString::fromUtf8(error.what());
  }
  for (const auto& [name, value] : truth)
    if (!met[name] && wrong.isEmpty())
      wrong << name + QStringLiteral(" does not follow from anything");
  return wrong;
}

}  // namespace jw::test
