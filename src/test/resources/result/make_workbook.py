"""Writes workbook.xlsx and workbook-1904.xlsx beside itself: a laboratory's results as another program writes them.

Run with openpyxl 3.1.5 (python -m pip install openpyxl==3.1.5). Codes are label codes of the committed vectors
(label-codes.csv); everything else is invented. TableReaderTest reads both files.
"""
import datetime
import pathlib

import openpyxl
from openpyxl.utils.datetime import CALENDAR_MAC_1904

HERE = pathlib.Path(__file__).parent
COLUMNS = ["Specimen_Code", "accession_number", "test_method", "stage", "finding", "tested_on", "reported_on",
           "status", "unsuitable_reason", "laboratory_item", "measured_value"]
TESTED = datetime.date(2025, 11, 18)
REPORTED = datetime.datetime(2025, 11, 19, 16, 30)


def line(sheet, cells, tested_format="yyyy-mm-dd", reported_format="mm-dd-yy"):
    sheet.append(cells)
    row = sheet.max_row
    for column, wanted in ((6, tested_format), (7, reported_format)):
        sheet.cell(row, column).number_format = wanted


def main():
    book = openpyxl.Workbook()
    sheet = book.active
    sheet.title = "Results"
    sheet.append(COLUMNS)
    words = ["T_SCREEN", "SCREENING", "NOT_DETECTED"]
    # 2: everything as it should be; days are dates in two formats, the accession is text, the value a number
    line(sheet, ["HQHV39NGPV", "00123", *words, TESTED, REPORTED, "FINAL", None, 3, 0.07])
    # 3: outer blanks, small letters, days as text
    line(sheet, [" hqhv-39ng-pv ", "A-3 ", "T_SCREEN", "screening", "not detected", "2025-11-18", "2025-11-19"],
         "General", "General")
    # 4: a code of digits that was kept as a number
    line(sheet, [12345678, 124, *words, TESTED, REPORTED])
    # 5: a code with an exponent that was kept as a number
    line(sheet, [1.2e45, "A-5", *words, TESTED, REPORTED])
    # 6: a day whose cell lost its format and shows the number of the day
    line(sheet, ["D78FQAV7X9", "A-6", *words, TESTED, REPORTED], "General", "General")
    # 7: a day in another order, as text
    line(sheet, ["D78FQAV7X9", "A-7", *words, "18/11/2025", "2025-11-19"], "General", "General")
    # 8: nothing at all
    sheet.append([])
    # 9: a word that is the error of a formula
    line(sheet, ["D78FQAV7X9", "A-9", "T_SCREEN", "SCREENING", "#N/A", TESTED, REPORTED])
    # 10: a word by a formula that was never computed
    line(sheet, ["D78FQAV7X9", "A-10", "T_SCREEN", "SCREENING", '="NOT_"&"DETECTED"', TESTED, REPORTED])
    # 11: a percentage and a number with a format of thousands; neither is a day
    line(sheet, ["CYNZYPV9RM", "A-11", *words, TESTED, REPORTED, None, None, None, 1234.5], "dd/mm/yyyy", "d-mmm-yy")
    sheet.cell(sheet.max_row, 11).number_format = "#,##0.00"
    other = book.create_sheet("Read me")
    other.append(["not read", "D78FQAV7X9"])
    book.save(HERE / "workbook.xlsx")

    book = openpyxl.Workbook()
    book.epoch = CALENDAR_MAC_1904
    sheet = book.active
    sheet.append(COLUMNS[:7])
    line(sheet, ["HQHV39NGPV", "A-1904", *words, TESTED, REPORTED])
    book.save(HERE / "workbook-1904.xlsx")


main()
