// The commands sweep, tolerance, search and remedies of the built program, against evaluate (own).
#include <QFile>
#include <QJsonArray>
#include <QJsonDocument>
#include <QJsonObject>
#include <QTemporaryDir>

#include <gtest/gtest.h>

#include "app/project_file.h"
#include "core/checks/check_order.h"
#include "core/checks/evaluation.h"
#include "core/model/band.h"
#include "core/model/field_catalogue.h"
#include "tests/app/run_program.h"

namespace jw {
namespace {

/// Rows of cells; no cell of these outputs holds a comma.
QList<QStringList> rowsOf(const QString& csv) {
  QList<QStringList> rows;
  for (const QString& line : csv.split('\n', Qt::SkipEmptyParts)) rows.push_back(line.split(','));
  return rows;
}

QString cell(const QList<QStringList>& rows, int row, const char* title) {
  return rows[row].value(int(rows[0].indexOf(title)));
}

Project loaded(const QString& file) { return loadProjectFile(file)->project; }

TEST(SweepCommand, RowsAreTheFullEvaluation) {
  const Outcome result =
      run({"sweep", holdingSample(), "--over", "transmission[1].ratio=80..120:20", "--csv"});
  EXPECT_TRUE(result.err.isEmpty()) << result.err.toStdString();
  const auto rows = rowsOf(result.out);
  ASSERT_EQ(rows.size(), 4);
  bool any = false;
  for (int k = 1; k < 4; ++k) {
    Project project = loaded(holdingSample());
    const std::string ratio = std::to_string(60 + 20 * k);
    ASSERT_TRUE(setField(project, "transmission[1].ratio", ratio));
    const Evaluation evaluation = evaluate(project);
    double worst = 1e9;
    for (const Check& check : evaluation.checks) {
      if (isSet(check.margin)) worst = std::min(worst, check.margin);
    }
    EXPECT_EQ(cell(rows, k, "transmission[1].ratio").toDouble(), 60 + 20 * k);
    EXPECT_DOUBLE_EQ(cell(rows, k, "worst margin").toDouble(), worst);
    EXPECT_EQ(cell(rows, k, "holds"), worst >= 0 ? "yes" : "no");
    any = any || worst >= 0;
    EXPECT_NEAR(cell(rows, k, "motor.torque_peak [N*m]").toDouble(),
                quantityValue(evaluation, "motor.torque_peak"), 1e-12);
  }
  EXPECT_EQ(result.code, any ? 0 : 1);
}

TEST(SweepCommand, SameInputSameBytes) {
  const QStringList arguments{"sweep", holdingSample(), "--over", "ratio=50..300/40", "--csv"};
  EXPECT_EQ(run(arguments).out, run(arguments).out);
}

TEST(SweepCommand, TextNamesTheBandAndItsLimits) {
  const QString out = run({"sweep", holdingSample(), "--over", "ratio=30..600/60"}).out;
  EXPECT_TRUE(out.contains("Holds from")) << out.toStdString();
  EXPECT_TRUE(out.contains("Inertia match"));
  EXPECT_TRUE(out.contains("Replaces no risk assessment"));
}

TEST(SweepCommand, TwoRangesMakeAMap) {
  const Outcome result = run({"sweep", holdingSample(), "--over", "load.payloadMass=1..9/3",
                              "--over", "transmission[1].ratio=60..120/4", "--csv"});
  const auto rows = rowsOf(result.out);
  ASSERT_EQ(rows.size(), 13) << result.err.toStdString();
  EXPECT_EQ(rows[0][0], "load.payloadMass [kg]");
  EXPECT_EQ(rows[0][1], "transmission[1].ratio");
}

TEST(StudyCommands, NothingThatHoldsGivesOne) {
  EXPECT_EQ(run({"sweep", holdingSample(), "--over", "load.payloadMass=500..600/3"}).code, 1);
  EXPECT_EQ(run({"search", holdingSample(), "--where", "mass<=1 g"}).code, 1);
  EXPECT_EQ(
      run({"tolerance", shortSample(), "--band", "load.payloadMass=1 %", "--draws", "50"}).code, 1);
}

TEST(StudyCommands, BadInputGivesTwoAndAMessage) {
  const QTemporaryDir folder;
  const QString broken = folder.filePath("broken.csv");
  QFile file(broken);
  ASSERT_TRUE(file.open(QIODevice::WriteOnly));
  file.write("name,mass [kg]\nx,heavy\n");
  file.close();
  const struct {
    QStringList arguments;
    const char* message;
  } cases[] = {
      {{"sweep", holdingSample(), "--over", "ratio"}, "--over"},
      {{"sweep", holdingSample(), "--over", "ratio=5"}, "range"},
      {{"sweep", holdingSample(), "--over", "motor.nothing=1..2/3"}, "motor.nothing"},
      {{"sweep", holdingSample(), "--over", "transmission[x].ratio=1..2/3"}, "no such field"},
      {{"sweep", holdingSample(), "--over", "load.payloadMass=1..2/3", "--over",
        "load.payloadMass=1..2/3"},
       "one field"},
      {{"tolerance", shortSample()}, "band"},
      {{"tolerance", holdingSample(), "--band", "motor.brakeTorque=5 J"}, "motor.brakeTorque"},
      {{"tolerance", holdingSample(), "--band", "motor.brakeTorque=5 %", "--draws", "0"},
       "--draws: '0' is out of range"},
      {{"tolerance", holdingSample(), "--draws", "1e3"},
       "--draws: '1e3' is no whole number; give a whole number from 2 to 100\u2009"
       "000"},
      {{"tolerance", holdingSample(), "--seed", "-1"}, "--seed: '-1' is out of range"},
      {{"tolerance", holdingSample(), "--band", "load.payloadMass=± 10 % gaussian"},
       "no shape of a band 'gaussian'"},
      {{"search", holdingSample(), "--most", "-3"}, "--most: '-3' is out of range"},
      {{"search", holdingSample(), "--most", "99999999999999999999"}, "out of range"},
      {{"search", holdingSample(), "--stage", "2"},
       "--stage: '2' is out of range; give a whole number from 0 to 1"},
      {{"search", holdingSample(), "--belt", "0=1..3/4000"},
       "191 million combinations are too many; at most 100 million: shorten a catalogue"},
      {{"search", holdingSample(), "--motors", broken}, "line 2"},
      {{"search", holdingSample(), "--motors", folder.filePath("none.csv")}, "none.csv"},
      {{"search", holdingSample(), "--where", "weight<=1 kg"}, "no such figure"},
      {{"search", holdingSample(), "--belt", "x"}, "--belt"},
      {{"search", holdingSample(), "--explain", "no motor", "no reducer"}, "no motor"},
      {{"remedies", holdingSample(), "--check", "no.check"}, "no.check"},
      {{"remedies", holdingSample(), "--motors", broken}, "line 2"},
  };
  for (const auto& one : cases) {
    const Outcome result = run(one.arguments);
    EXPECT_EQ(result.code, 2) << one.arguments.join(' ').toStdString();
    EXPECT_TRUE(result.err.contains(one.message)) << result.err.toStdString();
    EXPECT_TRUE(result.out.isEmpty()) << result.out.toStdString();
  }
}

TEST(ToleranceCommand, JsonHasInputsAndChances) {
  const QStringList arguments{"tolerance",
                              holdingSample(),
                              "--draws",
                              "400",
                              "--json",
                              "--band",
                              "load.payloadMass=± 40 %",
                              "--band",
                              "motor.torqueConstant=± 5 % normal"};
  const Outcome result = run(arguments);
  EXPECT_EQ(result.out, run(arguments).out);
  const QJsonObject document = QJsonDocument::fromJson(result.out.toUtf8()).object();
  EXPECT_EQ(document["format"].toString(), "jointwright tolerance");
  EXPECT_EQ(document["draws"].toInt(), 400);
  // Both are among the bands that the sample has of its own.
  EXPECT_EQ(document["inputs"].toArray().size(), int(bandedFields(loaded(holdingSample())).size()));
  const double all = document["all"].toObject()["chance"].toDouble(-1);
  EXPECT_EQ(result.code, all == 1 ? 0 : 1);
  for (const QJsonValue& check : document["checks"].toArray()) {
    if (check["chance"].isNull()) continue;
    EXPECT_GE(check["chance"].toDouble(), all);
    EXPECT_LE(check["chance_low"].toDouble(), check["chance"].toDouble());
    EXPECT_GE(check["chance_high"].toDouble(), check["chance"].toDouble());
    EXPECT_TRUE(check["rank_correlation"].toObject().contains("load.payloadMass"));
  }
}

TEST(SearchCommand, RowsHoldInFullAndTheBestCanBeAdopted) {
  const QTemporaryDir folder;
  const QString adopted = folder.filePath("adopted.jointwright");
  const Outcome result = run({"search", holdingSample(), "--csv", "--adopt", adopted});
  ASSERT_EQ(result.code, 0) << result.err.toStdString();
  const auto rows = rowsOf(result.out);
  ASSERT_GT(rows.size(), 1);
  double lightest = 0;
  for (int k = 1; k < rows.size(); ++k) {
    EXPECT_GE(cell(rows, k, "worst margin").toDouble(), 0);
    EXPECT_GE(cell(rows, k, "mass [kg]").toDouble(), lightest);
    lightest = cell(rows, k, "mass [kg]").toDouble();
  }
  const Project project = loaded(adopted);
  EXPECT_EQ(project.variants.size(), loaded(holdingSample()).variants.size() + 1);
  EXPECT_TRUE(project.active().name.starts_with(cell(rows, 1, "motor").toStdString()));
  for (const Check& check : evaluate(project).checks) EXPECT_NE(check.state, CheckState::Short);
}

TEST(SearchCommand, OwnCataloguesAndExplanation) {
  const QTemporaryDir folder;
  const auto put = [&](const char* name, const char* text) {
    QFile file(folder.filePath(name));
    EXPECT_TRUE(file.open(QIODevice::WriteOnly));
    file.write(text);
    return file.fileName();
  };
  const QString motors = put("m.csv",
                             "name,polePairs,torqueConstant [N*m/A],resistance [ohm],inductance "
                             "[mH],rotorInertia [kg*cm^2],continuousTorque [N*m]\nweak,4,0.02,1,1,"
                             "0.01,0.01\n");
  const QString reducers = put("r.csv", "name,family,ratio,efficiency\nplain,planetary,5,0.95\n");
  const QStringList catalogues{"--motors", motors, "--reducers", reducers};
  const Outcome none = run(QStringList{"search", holdingSample()} + catalogues);
  EXPECT_EQ(none.code, 1) << none.err.toStdString();
  EXPECT_TRUE(none.out.contains("Nothing was found")) << none.out.toStdString();
  const Outcome why =
      run(QStringList{"search", holdingSample(), "--explain", "weak", "plain"} + catalogues);
  EXPECT_EQ(why.code, 1);
  EXPECT_TRUE(why.out.contains("Motor continuous torque")) << why.out.toStdString();
  EXPECT_TRUE(why.out.contains("T_rms"));
}

/// Typing what a remedy says makes that verdict hold with the target margin.
TEST(RemediesCommand, JsonCanBeTypedBack) {
  const QStringList arguments{"remedies", shortSample(), "--check", "joint.holding", "--json"};
  const Outcome result = run(arguments);
  EXPECT_EQ(result.code, 1);
  EXPECT_EQ(result.out, run(arguments).out);
  const QJsonObject document = QJsonDocument::fromJson(result.out.toUtf8()).object();
  EXPECT_EQ(document["format"].toString(), "jointwright remedies");
  ASSERT_EQ(document["checks"].toArray().size(), 1);
  const QJsonObject check = document["checks"].toArray()[0].toObject();
  EXPECT_EQ(check["state"].toString(), "short");
  EXPECT_GE(check["depends_on"].toArray().size(), 3);
  EXPECT_GE(check["remedies"].toArray().size(), 2);
  for (const QJsonValue& value : check["remedies"].toArray()) {
    Project project = loaded(shortSample());
    const QJsonObject set = value.toObject()["set"].toObject();
    for (const QString& path : set.keys()) {
      ASSERT_TRUE(setField(project, path.toStdString(), set[path].toString().toStdString()));
    }
    for (const Check& one : evaluate(project).checks) {
      if (one.id != "joint.holding") continue;
      EXPECT_NEAR(one.margin, 0.1, 1e-6);
    }
  }
}

TEST(RemediesCommand, HoldingJointEndsWithZero) {
  const Outcome result = run({"remedies", holdingSample()});
  EXPECT_EQ(result.code, 0);
  EXPECT_TRUE(result.out.contains("Depends most on")) << result.out.toStdString();
  EXPECT_TRUE(result.out.contains("Asking for less"));
}

TEST(StudyCommands, HelpTellsTheForm) {
  for (const char* command : {"sweep", "tolerance", "search", "remedies"}) {
    const Outcome help = run({command, "--help"});
    EXPECT_EQ(help.code, 0);
    EXPECT_TRUE(help.out.contains("Exit code")) << command;
  }
}

}  // namespace
}  // namespace jw
