// The built program, run as a person or a script runs it.
#include <QCoreApplication>
#include <QDate>
#include <QFile>
#include <QImageReader>
#include <QJsonArray>
#include <QJsonDocument>
#include <QJsonObject>
#include <QProcess>
#include <QRegularExpression>
#include <QTemporaryDir>
#include <QThread>

#include <gtest/gtest.h>

#include "core/checks/acceptance_check.h"
#include "core/files/project_text.h"
#include "tests/app/run_program.h"

namespace jw {
namespace {

QByteArray contentOf(const QString& fileName) {
  QFile file(fileName);
  return file.open(QIODevice::ReadOnly) ? file.readAll() : QByteArray();
}

void putContent(const QString& fileName, const QByteArray& bytes) {
  QFile file(fileName);
  ASSERT_TRUE(file.open(QIODevice::WriteOnly));
  ASSERT_EQ(file.write(bytes), bytes.size());
}

QJsonObject json(const QString& text) { return QJsonDocument::fromJson(text.toUtf8()).object(); }

TEST(CheckCommand, SampleThatHoldsGivesZero) {
  const Outcome result = run({"check", holdingSample()});
  EXPECT_EQ(result.code, 0) << result.err.toStdString();
  EXPECT_TRUE(result.err.isEmpty()) << result.err.toStdString();
  EXPECT_TRUE(result.out.contains("Replaces no risk assessment"));
}

TEST(CheckCommand, SampleThatIsShortGivesOneAndTellsTheWorstFirst) {
  const Outcome result = run({"check", shortSample()});
  EXPECT_EQ(result.code, 1);
  EXPECT_TRUE(result.out.section('\n', 2, 2).startsWith("short")) << result.out.toStdString();
}

TEST(CheckCommand, ColumnsAreAligned) {
  const QString out = run({"check", holdingSample()}).out;
  const QStringList lines = out.split('\n').mid(2, 5);
  for (const QString& line : lines) EXPECT_EQ(line.size(), lines[0].size()) << line.toStdString();
}

TEST(CheckCommand, JsonSaysTheSameAsTheEvaluation) {
  const Outcome result = run({"check", "--json", shortSample()});
  EXPECT_EQ(result.code, 1);
  const QJsonObject document = json(result.out);
  EXPECT_EQ(document["format"].toString(), "jointwright check");
  EXPECT_EQ(document["version"].toInt(), 1);
  const auto read = readProject(contentOf(shortSample()).toStdString(), "sample");
  ASSERT_TRUE(read.has_value());
  const Evaluation evaluation = evaluate(read->project);
  ASSERT_EQ(document["checks"].toArray().size(), int(evaluation.checks.size()));
  for (const QJsonValue& value : document["checks"].toArray()) {
    const QJsonObject object = value.toObject();
    const int stage = object["stage"].isNull() ? -1 : object["stage"].toInt() - 1;
    const auto same = [&](const Check& c) {
      return c.stage == stage && object["id"] == QString::fromStdString(std::string(c.id));
    };
    const auto check = std::find_if(evaluation.checks.begin(), evaluation.checks.end(), same);
    ASSERT_NE(check, evaluation.checks.end()) << object["id"].toString().toStdString();
    if (object["margin"].isDouble()) {
      EXPECT_DOUBLE_EQ(object["margin"].toDouble(), check->margin);
    }
    EXPECT_EQ(object["state"].toString().toStdString(), stateName(check->state));
  }
  EXPECT_EQ(document["worst"].toObject()["state"].toString(), "short");
}

TEST(CheckCommand, SetChangesAFieldForThisRunOnly) {
  const QByteArray before = contentOf(holdingSample());
  const Outcome result = run({"check", "--json", "--set", "load.payloadMass=40 kg", "--set",
                              "motor.rotorInertia=0.5 kg*cm^2", holdingSample()});
  EXPECT_EQ(result.code, 1) << result.err.toStdString();
  EXPECT_EQ(contentOf(holdingSample()), before);
}

TEST(CheckCommand, UnsetInputOpensAVerdictNamingTheField) {
  const QStringList set{"--set", "motor.brakeTorque=", holdingSample()};
  const Outcome result = run(QStringList{"check", "--json"} + set);
  EXPECT_EQ(result.code, 0) << result.err.toStdString();
  bool open = false;
  for (const QJsonValue& value : json(result.out)["checks"].toArray()) {
    if (value["state"] != "open") continue;
    open = true;
    EXPECT_TRUE(value["margin"].isNull());
    EXPECT_FALSE(value["missing"].toArray().isEmpty());
  }
  EXPECT_TRUE(open);
  EXPECT_EQ(run(QStringList{"check", "--strict"} + set).code, 1);
}

/// The sample that holds, with far more life wanted; every short verdict is accepted.
QByteArray shortOfLifeAccepted() {
  auto read = readProject(contentOf(holdingSample()).toStdString(), "sample");
  Project project = read.value().project;
  project.requirements.life *= 1000;
  const Evaluation evaluation = evaluate(project);
  for (const Check& check : evaluation.checks) {
    if (check.state != CheckState::Short) continue;
    putAcceptance(project.active(), acceptanceOf(check, "for the fair", "2026-03-31"));
  }
  return QByteArray::fromStdString(writeProject(project));
}

TEST(CheckCommand, AcceptedVerdictsFailOnlyWhenStrict) {
  QTemporaryDir folder;
  const QString file = folder.filePath("accepted.jointwright");
  putContent(file, shortOfLifeAccepted());
  const Outcome result = run({"check", file});
  EXPECT_EQ(result.code, 0) << result.err.toStdString();
  EXPECT_TRUE(result.out.section('\n', 2, 2).startsWith("short")) << "it is short all the same";
  EXPECT_TRUE(result.out.section('\n', 2, 2).contains("accepted 2026-03-31: for the fair"));
  EXPECT_EQ(run({"check", "--strict", file}).code, 1);
}

TEST(CheckCommand, ReopenedVerdictsFail) {
  QTemporaryDir folder;
  const QString file = folder.filePath("accepted.jointwright");
  putContent(file, shortOfLifeAccepted());
  const Outcome result = run({"check", "--json", "--set", "requirements.life=1e9 h", file});
  EXPECT_EQ(result.code, 1) << result.err.toStdString();
  bool reopened = false;
  for (const QJsonValue& value : json(result.out)["checks"].toArray()) {
    const QJsonValue accepted = value["accepted"];
    if (accepted.isNull()) continue;
    EXPECT_EQ(accepted["note"].toString(), "for the fair");
    EXPECT_EQ(accepted["date"].toString(), "2026-03-31");
    reopened = reopened || !accepted["stands"].toBool(true);
  }
  EXPECT_TRUE(reopened);
}

struct BadRun {
  const char* name;
  QStringList arguments;
  const char* message;
};

void PrintTo(const BadRun& bad, std::ostream* out) { *out << bad.name; }

class BadCommand : public testing::TestWithParam<BadRun> {};

TEST_P(BadCommand, GivesTwoAMessageAndNothingElse) {
  const Outcome result = run(GetParam().arguments);
  EXPECT_EQ(result.code, 2);
  EXPECT_TRUE(result.out.isEmpty()) << result.out.toStdString();
  EXPECT_TRUE(result.err.contains(GetParam().message)) << result.err.toStdString();
}

INSTANTIATE_TEST_SUITE_P(
    Arguments, BadCommand,
    testing::Values(
        BadRun{"NoFile", {"check"}, "FILE"}, BadRun{"NoDisplay", {holdingSample()}, "no display"},
        BadRun{"MissingFile", {"check", "/nonexistent/x.jointwright"}, "no such file"},
        BadRun{"Folder", {"check", JW_SAMPLES_DIR}, "folder"},
        BadRun{"UnknownOption", {"check", holdingSample(), "--jsno"}, "--jsno"},
        BadRun{"UnknownField",
               {"check", holdingSample(), "--set", "motor.rotorInertai=1"},
               "motor.rotorInertia"},
        BadRun{"WrongUnit",
               {"check", holdingSample(), "--set", "motor.rotorInertia=1 V"},
               "--set motor.rotorInertia"},
        BadRun{"NoValue", {"check", holdingSample(), "--set", "motor.rotorInertia"}, "PATH=VALUE"},
        BadRun{"NoOutput", {"figure", holdingSample(), "--view", "envelope"}, "--output"},
        BadRun{"NoSuchView",
               {"figure", holdingSample(), "--view", "moon", "-o", "x.png"},
               "choose one of"},
        BadRun{"BadSize",
               {"figure", holdingSample(), "--view", "cycle", "--size", "9x9", "-o", "x.png"},
               "60 × 40 mm"},
        BadRun{"BadDpi",
               {"figure", holdingSample(), "--view", "cycle", "--dpi", "5", "-o", "x.png"},
               "36 to 1\u2009200"},
        BadRun{"BadSuffix", {"figure", holdingSample(), "--view", "cycle", "-o", "x.gif"}, "png"},
        BadRun{"FigureFolder",
               {"figure", holdingSample(), "--view", "cycle", "-o", "/nonexistent/x.png"},
               "/nonexistent"},
        BadRun{"NoSuchStage",
               {"figure", holdingSample(), "--view", "drive9", "-o", "x.png"},
               "--view drive9: this joint has 2 stages"},
        BadRun{"ReviewFile", {"review", holdingSample(), "-o", holdingSample()}, "this is a file"},
        BadRun{"ReviewBelowFile",
               {"review", holdingSample(), "-o", holdingSample() + "/new/deep"},
               "1-orchard-shoulder.jointwright: this is a file"},
        BadRun{"NoSuchCommand", {"bogus", holdingSample()}, "there is no command 'bogus'"},
        BadRun{"NoSuchCommandNamesAll",
               {"bogus", holdingSample(), "--json"},
               "check, figure, review, sweep, tolerance, search, remedies, fields"},
        BadRun{"NeitherCommandNorFile", {"bogus"}, "neither a command nor a file 'bogus'"},
        BadRun{"BeyondTheChain",
               {"check", holdingSample(), "--set", "transmission[7].ratio=5"},
               "--set transmission[7].ratio: there are 2 stages"}),
    [](const testing::TestParamInfo<BadRun>& bad) { return std::string(bad.param.name); });

TEST(BadProjectFile, MessageNamesFileAndPlace) {
  const QTemporaryDir folder;
  const QString file = folder.filePath("bad.jointwright");
  putContent(file, "{\n  \"format\": \"jointwright project\",\n  oops\n}");
  const Outcome result = run({"check", file});
  EXPECT_EQ(result.code, 2);
  EXPECT_TRUE(result.err.contains("bad.jointwright, line 3")) << result.err.toStdString();
}

TEST(FieldsCommand, ListsEveryFieldWithUnitAndHelp) {
  const Outcome table = run({"fields"});
  EXPECT_EQ(table.code, 0);
  EXPECT_TRUE(table.out.contains("transmission[N].ratio"));
  const QJsonArray fields = json(run({"fields", "--json"}).out)["fields"].toArray();
  EXPECT_GT(fields.size(), 80);
  EXPECT_TRUE(table.out.contains("otherCycles[N].segments[N].duration"));
  EXPECT_TRUE(table.out.contains("load.masses[N].mass"));
  for (const QJsonValue& field : fields) {
    EXPECT_FALSE(field["path"].toString().isEmpty());
    EXPECT_FALSE(field["help"].toString().isEmpty()) << field["path"].toString().toStdString();
  }
}

TEST(FigureCommand, WritesEachKindOfFile) {
  const QTemporaryDir folder;
  for (const char* suffix : {"png", "svg", "pdf"}) {
    const QString file = folder.filePath(QString("figure.") + suffix);
    const Outcome result = run({"figure", holdingSample(), "--view", "envelope", "-o", file});
    EXPECT_EQ(result.code, 0) << result.err.toStdString();
    EXPECT_GT(contentOf(file).size(), 1000) << suffix;
  }
  // 160 mm at 300 dots per inch of 25.4 mm are 1889.8 dots.
  const QSize size = QImageReader(folder.filePath("figure.png")).size();
  EXPECT_NEAR(size.width(), 1889.8, 1);
  EXPECT_NEAR(size.height(), 1299.2, 1);
}

TEST(FigureCommand, BadInputLeavesAnOlderFileAlone) {
  const QTemporaryDir folder;
  const QString file = folder.filePath("figure.png");
  putContent(file, "older");
  const Outcome result =
      run({"figure", folder.filePath("none.jointwright"), "--view", "cycle", "-o", file});
  EXPECT_EQ(result.code, 2);
  EXPECT_EQ(contentOf(file), "older");
}

/// Of a second run in another second.
QByteArray pdfOfLaterRun(const QStringList& arguments, const QString& file) {
  QThread::msleep(1'100);
  EXPECT_EQ(run(arguments).code, 0);
  return contentOf(file);
}

/// Qt writes the time of day; it is midnight instead. Other bytes differ in no run either.
void expectMidnightOfToday(const QByteArray& pdf) {
  const QByteArray today = QDate::currentDate().toString("yyyyMMdd").toLatin1();
  EXPECT_TRUE(pdf.contains("/CreationDate (D:" + today + "000000"));
}

TEST(FigureCommand, SameInputSamePdfByteForByte) {
  const QTemporaryDir folder;
  const QString file = folder.filePath("figure.pdf");
  const QStringList arguments{"figure", holdingSample(), "--view", "cycle", "-o", file};
  ASSERT_EQ(run(arguments).code, 0);
  const QByteArray first = contentOf(file);
  expectMidnightOfToday(first);
  EXPECT_TRUE(first == pdfOfLaterRun(arguments, file));
}

TEST(ReviewCommand, SameInputSameFilesByteForByteInANewFolder) {
  const QTemporaryDir folder;
  const QString target = folder.filePath("new/deep");
  const QStringList arguments{"review", holdingSample(), "-o", target};
  const Outcome result = run(arguments);
  ASSERT_EQ(result.code, 0) << result.err.toStdString();
  const QByteArray first = contentOf(target + "/review.pdf");
  const QByteArray figure = contentOf(target + "/envelope.png");
  expectMidnightOfToday(first);
  EXPECT_TRUE(first == pdfOfLaterRun(arguments, target + "/review.pdf"));
  EXPECT_FALSE(figure.isEmpty());
  EXPECT_TRUE(figure == contentOf(target + "/envelope.png"));
}

TEST(ReviewCommand, WritesPdfFiguresAndVerdicts) {
  const QTemporaryDir folder;
  const Outcome result = run({"review", shortSample(), "-o", folder.path()});
  EXPECT_EQ(result.code, 0) << result.err.toStdString();
  EXPECT_TRUE(contentOf(folder.filePath("review.pdf")).startsWith("%PDF"));
  for (const char* name : {"envelope.png", "cycle.png"}) {
    EXPECT_FALSE(QImageReader(folder.filePath(name)).size().isEmpty()) << name;
  }
  EXPECT_EQ(QString::fromUtf8(contentOf(folder.filePath("verdicts.txt"))).section('\n', 1),
            run({"check", shortSample()}).out.section('\n', 1));
}

TEST(ReviewCommand, OfADirectDriveHasNoEmptyFigures) {
  const QTemporaryDir folder;
  ASSERT_EQ(run({"review", sample("4-camera-head.jointwright"), "-o", folder.path()}).code, 0);
  for (const char* name :
       {"ratio.png", "precision.png", "response.png", "drive.png", "tornado.png"})
    EXPECT_FALSE(QFile::exists(folder.filePath(name))) << name;
  EXPECT_TRUE(QFile::exists(folder.filePath("toolerror.png")));
}

// Poppler, an independent reader of PDF, gets the numbers of the list of verdicts back: tabular
// figures are glyphs of their own, which a reader has to know for digits.
TEST(ReviewCommand, NumbersCanBeReadOutOfThePdf) {
  const QTemporaryDir folder;
  ASSERT_EQ(run({"review", holdingSample(), "-o", folder.path()}).code, 0);
  QProcess reader;
  reader.start("pdftotext", {"-layout", folder.filePath("review.pdf"), "-"});
  ASSERT_TRUE(reader.waitForFinished(30'000)) << reader.errorString().toStdString();
  const auto withoutSpaces = [](QString text) {
    return text.removeIf([](QChar c) { return c.isSpace(); });
  };
  const QString text = withoutSpaces(QString::fromUtf8(reader.readAllStandardOutput()));
  QStringList margins;
  static const QRegularExpression kMargin("[+\u2212][0-9][^%\\n]*%");
  for (auto found = kMargin.globalMatch(run({"check", holdingSample()}).out); found.hasNext();)
    margins << withoutSpaces(found.next().captured());
  EXPECT_GT(margins.size(), 20);
  for (const QString& margin : margins) EXPECT_TRUE(text.contains(margin)) << margin.toStdString();
}

TEST(Program, TellsVersionAndHelp) {
  EXPECT_TRUE(run({"--version"}).out.startsWith("Jointwright "));
  const Outcome help = run({"check", "--help"});
  EXPECT_EQ(help.code, 0);
  EXPECT_TRUE(help.out.contains("jointwright check"));
  EXPECT_TRUE(help.out.contains("unlimited"));
}

}  // namespace
}  // namespace jw
