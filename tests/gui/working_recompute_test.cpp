// Every printed working, computed again from its own printed digits: by muParser and UDUNITS-2,
// which know nothing of the program. How far the printed digits leave a result open is found by
// moving each by half a unit of its last place.
#include <set>

#include <gtest/gtest.h>

#include "core/checks/check_writer.h"
#include "tests/core/checks/every_project.h"
#include "tests/gui/printed_working.h"
#include "widgets/panels/working_text.h"

namespace jw {
namespace {

using test::recompute;

std::map<QString, double> truthOf(const Check& check) {
  if (check.state == CheckState::Open) return {};
  return {{"Demand", check.demand}, {"Capacity", check.capacity}};
}

TEST(PrintedWorking, OfEveryCheckRecomputesToItsVerdict) {
  std::set<std::string_view> met;
  for (const NamedProject& one : everyProject()) {
    const Evaluation evaluation = evaluate(one.project);
    for (const Check& check : evaluation.checks) {
      const QString plain = workingPlain(check, explain(one.project, evaluation, check));
      const QStringList wrong = recompute(plain, truthOf(check));
      EXPECT_TRUE(wrong.isEmpty()) << one.name << ": " << check.title << "\n"
                                   << wrong.join("\n").toStdString() << "\n"
                                   << plain.toStdString();
      if (check.state != CheckState::Open) met.insert(check.id);
    }
  }
  for (const CheckKind& kind : checkKinds()) EXPECT_TRUE(met.contains(kind.id)) << kind.id;
}

TEST(PrintedWorking, OfEveryHeadlineFigureRecomputesToItsValue) {
  std::set<std::string_view> met, all;
  for (const NamedProject& one : everyProject()) {
    const Evaluation evaluation = evaluate(one.project);
    for (const NamedQuantity& figure : evaluation.quantities) {
      all.insert(figure.id);
      const Working working = explainQuantity(one.project, evaluation, figure.id);
      EXPECT_FALSE(working.formula.empty()) << figure.id;
      EXPECT_FALSE(working.source.empty()) << figure.id;
      if (!isSet(figure.value)) continue;
      met.insert(figure.id);
      const QString plain = figurePlain(QString::fromUtf8(figure.label.data()), working);
      const QStringList wrong = recompute(plain, {{"Result", figure.value}});
      EXPECT_TRUE(wrong.isEmpty()) << one.name << ": " << figure.id << "\n"
                                   << wrong.join("\n").toStdString() << "\n"
                                   << plain.toStdString();
    }
  }
  EXPECT_EQ(met, all) << "every figure is known in some project";
}

/// The printed text with the first digit after `place` changed.
QString tampered(QString plain, const QString& place) {
  qsizetype at = plain.indexOf(place);
  EXPECT_GE(at, 0) << place.toStdString();
  at += place.size();
  while (at < plain.size() && !plain[at].isDigit()) ++at;
  plain[at] = plain[at] == u'9' ? u'1' : QChar(plain[at].unicode() + 1);
  return plain;
}

TEST(PrintedWorking, ATamperedOneIsFound) {
  const Project project = exampleProject();
  const Evaluation evaluation = evaluate(project);
  for (const Check& check : evaluation.checks) {
    if (check.id != "drive.life" || check.stage != 1) continue;
    const QString plain = workingPlain(check, explain(project, evaluation, check));
    EXPECT_TRUE(recompute(plain, truthOf(check)).isEmpty()) << plain.toStdString();
    for (const char* symbol : {"L_r = ", "T_av = ", "n_av = ", "p = ", "Demand = L_w = "}) {
      EXPECT_FALSE(recompute(tampered(plain, symbol), truthOf(check)).isEmpty()) << symbol;
    }
    QString formula = plain;
    formula.replace("n_r / n_av", "n_av / n_r");
    EXPECT_FALSE(recompute(formula, truthOf(check)).isEmpty()) << "another expression";
    QString gone = plain;
    gone.replace("Capacity = L = ", "Capacity = ");
    EXPECT_FALSE(recompute(gone, truthOf(check)).isEmpty()) << "no expression at all";
    Check other = check;
    other.capacity *= 1.001;
    EXPECT_FALSE(recompute(plain, truthOf(other)).isEmpty()) << "another verdict";
  }
}

// Values of units: 1 rpm = 2 pi / 60 rad/s; 1 kg·cm² = 1e-4 kg·m² (BIPM, SI Brochure, 9th edition).
TEST(PrintedWorking, UnitsAreReadByUdunits) {
  EXPECT_NEAR(test::unitScale("rpm"), 0.10471975511965977, 1e-12);
  EXPECT_NEAR(test::unitScale(QStringLiteral("kg·cm²")), 1e-4, 1e-16);
  EXPECT_NEAR(test::unitScale(QStringLiteral("N·m/arcmin")), 3437.746770784939, 1e-6);
  EXPECT_NEAR(test::unitScale("%"), 0.01, 1e-15);
  EXPECT_NEAR(test::unitScale(QStringLiteral("°")), 0.017453292519943295, 1e-14);
  EXPECT_NEAR(test::readPrinted(QStringLiteral("−7\u2009000 h")).value, -2.52e7, 1e-3);
}

}  // namespace
}  // namespace jw
