// The cautions that reports carry beside their verdicts, against cautionOf (own).
#include <QFile>
#include <QJsonArray>
#include <QJsonDocument>
#include <QJsonObject>
#include <QTemporaryDir>

#include <gtest/gtest.h>

#include "app/caution_text.h"
#include "core/checks/cautions.h"
#include "tests/app/run_program.h"

namespace jw {
namespace {

QString qt(std::string_view text) { return QString::fromUtf8(text.data(), qsizetype(text.size())); }

/// On one line, as the wrapped lines of one caution were before.
QString joined(const QString& text) { return text.simplified(); }

QJsonObject json(const QStringList& arguments) {
  return QJsonDocument::fromJson(run(arguments).out.toUtf8()).object();
}

/// The cautions of the checks that a document lists.
QStringList cautionsOf(const QJsonObject& document) {
  QStringList cautions;
  for (const std::string_view caution : kCautions) {
    for (const QJsonValue& check : document["checks"].toArray()) {
      if (cautionOf(check["id"].toString().toStdString()) != caution) continue;
      cautions << qt(caution);
      break;
    }
  }
  return cautions;
}

QStringList strings(const QJsonValue& list) {
  QStringList all;
  for (const QJsonValue& one : list.toArray()) all << one.toString();
  return all;
}

TEST(Cautions, StandBesideTheChecksInTheirOrderOnce) {
  EXPECT_TRUE(cautionsBeside({"motor.speed", "", "no.check"}).empty());
  const auto cautions = cautionsBeside(
      {"motor.touch_temperature", "joint.stopping_angle", "joint.stopping_time", "joint.holding"});
  const std::vector<std::string_view> expected{kCautions[3], kCautions[4], kCautions[6]};
  EXPECT_EQ(cautions, expected);
}

TEST(Cautions, NameTheStandardsOfHoldingAndStoredEnergy) {
  for (const char* standard : {"ISO 12100", "ISO 13849-1"})
    EXPECT_NE(cautionOf("joint.holding").find(standard), std::string_view::npos);
  for (const char* standard : {"ISO 14118", "IEC 60204-1"})
    EXPECT_NE(cautionOf("supply.voltage_rise").find(standard), std::string_view::npos);
  EXPECT_EQ(cautionOf("joint.positioning"), cautionOf("motor.magnet"));
  EXPECT_EQ(cautionOf("motor.temperature_winding"), cautionOf("motor.touch_temperature"));
}

TEST(Cautions, AreWrappedAndLoseNoWord) {
  const QString text =
      QString::fromStdString(cautionText({"joint.holding", "joint.collision", "motor.magnet"}));
  for (const QString& line : text.split('\n')) EXPECT_LE(line.size(), 100) << line.toStdString();
  for (const std::size_t k : {3U, 7U, 8U})
    EXPECT_TRUE(joined(text).contains(qt(kCautions[k]))) << kCautions[k];
}

TEST(Cautions, OfTheJsonAreThoseOfItsChecks) {
  const QList<QStringList> commands{
      {"check", "--json", holdingSample()},
      {"remedies", "--json", shortSample(), "--check", "joint.holding"},
      {"tolerance", "--json", holdingSample(), "--draws", "20", "--band", "load.payloadMass=1 %"}};
  for (const QStringList& command : commands) {
    const QJsonObject document = json(command);
    const QStringList expected = cautionsOf(document);
    EXPECT_FALSE(expected.isEmpty()) << command[0].toStdString();
    EXPECT_EQ(strings(document["cautions"]), expected) << command[0].toStdString();
    EXPECT_EQ(document["caution"].toString(), qt(kCaution));
  }
}

TEST(Cautions, OfTheTextEndIt) {
  const QString text = joined(run({"check", holdingSample()}).out);
  const QStringList cautions = strings(json({"check", "--json", holdingSample()})["cautions"]);
  EXPECT_TRUE(text.endsWith(qt(kCaution) + ' ' + cautions.join(' '))) << text.toStdString();
  const QString remedies = joined(run({"remedies", shortSample(), "--check", "joint.holding"}).out);
  EXPECT_TRUE(remedies.endsWith(qt(kCautions[3]))) << remedies.toStdString();
}

TEST(Cautions, OfStudiesAreThoseOfTheChecksTheyName) {
  const QList<QStringList> commands{
      {"sweep", holdingSample(), "--over", "load.payloadMass=1..60/12"},
      {"sweep", holdingSample(), "--over", "ratio=30..600/12"},
      {"sweep", holdingSample(), "--over", "load.payloadMass=1..60/3", "--over",
       "requirements.ambient=20..60/3"}};
  for (const QStringList& command : commands) {
    const QString out = run(command).out;
    const qsizetype end = out.indexOf(qt(kCaution));
    ASSERT_GE(end, 0) << out.toStdString();
    const QString names = out.left(end);
    const QString cautions = joined(out.mid(end));
    for (const char* id : {"motor.temperature_winding", "joint.holding", "joint.collision"}) {
      if (!names.contains(id)) continue;
      EXPECT_TRUE(cautions.contains(qt(cautionOf(id)))) << id;
    }
  }
}

TEST(CheckCommand, TellsWhatItPassedOverBeforeTheVerdicts) {
  const QTemporaryDir folder;
  QFile given(holdingSample());
  ASSERT_TRUE(given.open(QIODevice::ReadOnly));
  QFile misspelt(folder.filePath("misspelt.jointwright"));
  ASSERT_TRUE(misspelt.open(QIODevice::WriteOnly));
  misspelt.write(given.readAll().replace("\"linkMass\"", "\"linkMas\""));
  misspelt.close();
  const QStringList lines = run({"check", misspelt.fileName()}).out.split('\n');
  ASSERT_GT(lines.size(), 5);
  EXPECT_TRUE(lines[0].contains("variant")) << lines[0].toStdString();
  const QString remarks = lines.mid(1, 3).join(' ');
  EXPECT_TRUE(remarks.contains("load.linkMas: ")) << remarks.toStdString();
  EXPECT_TRUE(remarks.contains("takes no part")) << remarks.toStdString();
  EXPECT_EQ(lines.filter("linkMas:").size(), 1);
}

}  // namespace
}  // namespace jw
