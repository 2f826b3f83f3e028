#include <gtest/gtest.h>

#include <QFile>
#include <QPdfWriter>
#include <QTemporaryDir>

#include "core/model/band.h"
#include "tests/gui/drive_support.h"
#include "tests/gui/heat_support.h"
#include "widgets/figures/family_study.h"
#include "widgets/figures/figure_export.h"
#include "widgets/figures/search_study.h"
#include "widgets/theme/theme.h"

namespace jw {
namespace {

QByteArray content(const QString& fileName) {
  QFile file(fileName);
  return file.open(QIODevice::ReadOnly) ? file.readAll() : QByteArray();
}

class Export : public ::testing::TestWithParam<QString> {
 protected:
  QString path(const QString& suffix) const { return folder.filePath("figure." + suffix); }
  QTemporaryDir folder;
  static Project drawable() {
    Project project = test::warmShoulder();
    EXPECT_TRUE(setBand(project, "load.payloadMass", "± 10 %"));
    project.active().transmission.back() = test::strainWaveStage();
    for (Stage& stage : project.active().transmission) {
      stage.backlash = 2e-4;
      stage.stiffness.first = 1e4;
    }
    project.active().motor.encoderSteps = 4096;
    project.requirements.reach = 0.5;
    return project;
  }
  static Snapshot prepared() {
    static const Snapshot kOnce = [] {  // a search takes a second
      Snapshot made = test::studied(drawable());
      made.search = std::make_shared<const SearchStudy>(bundledSearch(made.evaluatedProject));
      made.families = std::make_shared<const FamilyStudy>(
          compareFamilies(bundledFamilies(made.evaluatedProject), {}));
      return made;
    }();
    return kOnce;
  }
  Snapshot snapshot = prepared();
};

// Signatures: PNG (ISO/IEC 15948, 5.2), PDF (ISO 32000-1, 7.5.2) and XML with an svg root (W3C
// SVG).
TEST_P(Export, WritesAllThreeFormats) {
  for (const auto& [suffix, signature] :
       {std::pair<QString, QByteArray>{"png", "\x89PNG\r\n"}, {"svg", "<svg "}, {"pdf", "%PDF-"}}) {
    const auto done = exportFigure(snapshot, GetParam(), path(suffix));
    ASSERT_TRUE(done) << describe(done.error());
    const QByteArray bytes = content(path(suffix));
    EXPECT_TRUE(bytes.left(200).contains(signature)) << suffix.toStdString();
    EXPECT_GT(bytes.size(), 4000) << suffix.toStdString();
  }
}

TEST_P(Export, HasTheSizeAndResolutionAskedFor) {
  ExportOptions options;
  options.dpi = 254;  // 10 pixels a millimetre
  const QImage image = figureImage(snapshot, GetParam(), options);
  EXPECT_EQ(image.size(), QSize(1600, 1100));
  EXPECT_EQ(image.dotsPerMeterX(), 10000);
}

TEST_P(Export, IsOnWhiteAndDrawnWhateverTheTheme) {
  const QImage light = figureImage(snapshot, GetParam());
  applyTheme(*qApp, ThemeKind::Dark);
  const QImage dark = figureImage(snapshot, GetParam());
  applyTheme(*qApp, ThemeKind::Light);
  EXPECT_EQ(light, dark);
  EXPECT_EQ(light.pixelColor(2, 2), QColor(Qt::white));
  EXPECT_EQ(light.pixelColor(light.width() - 3, light.height() - 3), QColor(Qt::white));
  int inked = 0;
  for (int y = light.height() / 5; y < light.height(); y += 3)
    for (int x = 0; x < light.width(); x += 3) inked += light.pixelColor(x, y) != Qt::white;
  EXPECT_GT(inked, 1000);
}

TEST_P(Export, SaysWhatItMustNotBeTakenFor) {
  ASSERT_TRUE(exportFigure(snapshot, GetParam(), path("svg")));
  EXPECT_TRUE(content(path("svg")).contains("Informs a design."));
  const bool hot = GetParam() == "heat" || GetParam() == "overload";
  EXPECT_EQ(content(path("svg")).contains("Hot surfaces"), hot);
}

TEST_P(Export, IsTheSameEveryTime) {
  ASSERT_TRUE(exportFigure(snapshot, GetParam(), path("png")));
  const QByteArray first = content(path("png"));
  ASSERT_TRUE(exportFigure(snapshot, GetParam(), path("png")));
  EXPECT_EQ(first, content(path("png")));
}

TEST_P(Export, PaintsIntoAnotherPainter) {
  QImage image(605, 360, QImage::Format_RGB32);
  image.fill(Qt::white);
  QPainter painter(&image);
  paintFigure(painter, QRectF(0, 0, 605, 360), snapshot, GetParam());
  painter.end();
  QImage blank(605, 360, QImage::Format_RGB32);
  blank.fill(Qt::white);
  EXPECT_NE(image, blank);
}

INSTANTIATE_TEST_SUITE_P(All, Export, ::testing::ValuesIn(figureNames()),
                         [](const auto& one) { return one.param.toStdString(); });

TEST(ExportErrors, SayWhatWouldBeRight) {
  QTemporaryDir folder;
  const Snapshot snapshot = test::snapshotOf(test::shoulder());
  const auto noFigure = exportFigure(snapshot, "moon", folder.filePath("a.png"));
  ASSERT_FALSE(noFigure);
  EXPECT_NE(noFigure.error().remedy.find("envelope"), std::string::npos);
  const auto noFormat = exportFigure(snapshot, "envelope", folder.filePath("a.bmp"));
  ASSERT_FALSE(noFormat);
  EXPECT_NE(noFormat.error().remedy.find(".svg"), std::string::npos);
  EXPECT_FALSE(exportFigure(snapshot, "envelope", folder.filePath("none/a.png")));
  EXPECT_FALSE(exportFigure(snapshot, "envelope", folder.filePath("a.png"), {{-3, 10}, 300, {}}));
  EXPECT_FALSE(exportFigure(snapshot, "envelope", folder.filePath("a.png"), {{160, 110}, 0, {}}));
}

TEST(ExportErrors, AnEmptyProjectStillGivesASheet) {
  QTemporaryDir folder;
  for (const QString& name : figureNames())
    EXPECT_TRUE(exportFigure(test::snapshotOf(Project{}), name, folder.filePath("a.pdf")));
}

}  // namespace
}  // namespace jw
