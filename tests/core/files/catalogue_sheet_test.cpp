// Catalogues as tables of texts. What is right and wrong in a cell is the field catalogue's to say:
// a sheet and the reader of whole files have to agree (own consistency).
#include "core/files/catalogue_sheet.h"

#include <gtest/gtest.h>

#include "core/studies/invented_catalogue.h"

namespace jw {
namespace {

constexpr const char* kMotors =
    "# Invented.\n# For a test.\n"
    "name,torqueConstant [N*m/A],rotorInertia [kg*cm^2],mass [kg]\n"
    "small,0.05,0.4,0.3\n"
    "\"large, with brake\",0.12,9.5 oz*in^2,1.4\n";

CatalogueSheet motors() { return *readSheet(CatalogueKind::Motors, kMotors, "m.csv"); }

TEST(CatalogueSheet, WritesWhatItRead) {
  const CatalogueSheet sheet = motors();
  EXPECT_EQ(sheet.remark, "Invented.\nFor a test.");
  EXPECT_EQ(writeSheet(sheet), kMotors);
  EXPECT_EQ(sheet.columns[2].label, "Rotor inertia");
}

// 1 oz·in² = 0.028349523125 kg x (0.0254 m)² (NIST SP 811, appendix B.8: ounce and inch).
TEST(CatalogueSheet, ACellMayNameItsOwnUnit) {
  const auto read = readCatalogue(CatalogueKind::Motors, kMotors, "m.csv");
  ASSERT_TRUE(read) << describe(read.error());
  EXPECT_NEAR(read->motors[1].motor.rotorInertia, 9.5 * 0.028349523125 * 0.0254 * 0.0254, 1e-12);
  EXPECT_NEAR(read->motors[0].motor.rotorInertia, 0.4e-4, 1e-12);
}

TEST(CatalogueSheet, MarksTheCellThatIsWrong) {
  CatalogueSheet sheet = motors();
  for (const char* bad : {"5 J", "-1", "two"}) {
    const SheetRowPtr row = withCell(sheet, *sheet.rows[0], 2, bad);
    ASSERT_EQ(row->wrong.size(), sheet.columns.size()) << bad;
    EXPECT_FALSE(row->wrong[2].empty()) << bad;
    EXPECT_TRUE(row->wrong[1].empty()) << bad;
  }
  sheet.replace(0, withCell(sheet, *sheet.rows[0], 2, "5 J"));
  EXPECT_EQ(sheet.wrongRows, 1U);
  EXPECT_FALSE(readCatalogue(CatalogueKind::Motors, writeSheet(sheet), "m.csv"));
  sheet.replace(0, withCell(sheet, *sheet.rows[0], 2, "0.5"));
  EXPECT_EQ(sheet.wrongRows, 0U);
  EXPECT_TRUE(readCatalogue(CatalogueKind::Motors, writeSheet(sheet), "m.csv"));
}

TEST(CatalogueSheet, NeedsANameAndAFamily) {
  CatalogueSheet sheet = motors();
  sheet.insert(1, makeRow(sheet, {}));
  EXPECT_EQ(sheet.wrongRows, 1U);
  EXPECT_NE(sheet.rows[1]->wrong[0].find("name"), std::string::npos);
  sheet.remove(1);
  EXPECT_EQ(sheet.wrongRows, 0U);
  const auto reducers =
      readSheet(CatalogueKind::Reducers, "name,family,ratio\na,planetary,5\n", "r.csv");
  ASSERT_TRUE(reducers);
  EXPECT_FALSE(wrongWith(reducers->columns[1], "planet").empty());
  EXPECT_FALSE(wrongWith(reducers->columns[1], "").empty());
  EXPECT_TRUE(wrongWith(reducers->columns[1], "cycloidal").empty());
}

// Every cell of the bundled catalogues is right by itself, as the whole is.
TEST(CatalogueSheet, AgreesWithTheReader) {
  const auto reducers = inventedReducers();
  const std::string text = writeReducerCatalogue(reducers, "Invented.");
  const auto sheet = readSheet(CatalogueKind::Reducers, text, "r.csv");
  ASSERT_TRUE(sheet);
  ASSERT_EQ(sheet->rows.size(), reducers.size());
  for (const SheetRowPtr& row : sheet->rows) {
    EXPECT_TRUE(makeRow(*sheet, row->cells)->wrong.empty()) << row->cells[0];
  }
  EXPECT_EQ(writeSheet(*sheet), text);
}

TEST(CatalogueSheet, RulesTakeColumnsOfOnesOwn) {
  const std::string text =
      "family,torquePerMass [N*m],own:price [EUR],own:lubrication\n"
      "planetary,22,350,grease for life\ncycloidal,35,900,\n";
  const auto read = readCatalogue(CatalogueKind::Rules, text, "x.csv");
  ASSERT_TRUE(read) << describe(read.error());
  ASSERT_EQ(read->own.size(), 2U);
  EXPECT_EQ(read->own[0].title, "price [EUR]");
  EXPECT_EQ(read->own[0].of(StageFamily::Cycloidal), "900");
  EXPECT_EQ(read->own[1].of(StageFamily::Planetary), "grease for life");
  EXPECT_EQ(read->own[1].of(StageFamily::Belt), "");
  EXPECT_EQ(read->rules.size(), defaultFamilyRules().size());
  const auto sheet = readSheet(CatalogueKind::Rules, text, "x.csv");
  ASSERT_TRUE(sheet);
  EXPECT_EQ(sheet->columns[2].label, "price");
  EXPECT_FALSE(wrongWith(sheet->columns[1], "0").empty());
  EXPECT_FALSE(wrongWith(sheet->columns[0], "worm").empty());
  EXPECT_TRUE(wrongWith(sheet->columns[3], "anything").empty());
  EXPECT_EQ(writeSheet(*sheet),
            "family,torquePerMass [N*m],own:price [EUR],own:lubrication\n"
            "planetary,22,350,grease for life\ncycloidal,35,900,\n");
}

TEST(CatalogueSheet, OffersTheFieldsThatAreNotThereYet) {
  CatalogueSheet sheet = motors();
  const auto further = furtherColumns(sheet);
  EXPECT_EQ(further.size(), structInfo<Motor>().fields.size() - 3);
  addColumn(sheet, further.front());
  EXPECT_EQ(sheet.rows[0]->cells.size(), sheet.columns.size());
  EXPECT_EQ(furtherColumns(sheet).size(), further.size() - 1);
  EXPECT_TRUE(readCatalogue(CatalogueKind::Motors, writeSheet(sheet), "m.csv"));
}

}  // namespace
}  // namespace jw
