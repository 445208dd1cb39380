"""Counts the A4 pages that trial sheets print on, against what the service has estimated.

By hand, since the renderer needs Pango from the system: `pip install weasyprint`, then
`cargo run --example printed_pages -- 12 | python tests/trial_sheet/printed_pages.py`; 12 takes every twelfth case.
Exit 1 when a sheet takes more pages than was estimated, or type is smaller than 7.5 pt.
"""

import json
import logging
import sys
from collections import Counter

from weasyprint import HTML

LEAST_TYPE = 7.5


def main():
    logging.disable(logging.CRITICAL)
    counted, faults = Counter(), []
    for line in sys.stdin:
        sheet = json.loads(line)
        pages = len(HTML(string=sheet["page"]).render().pages)
        counted[pages, sheet["detail"], sheet["type_size_pt"]] += 1
        if pages != sheet["pages"] or sheet["type_size_pt"] < LEAST_TYPE:
            faults.append(f'{sheet["name"]}: {pages} pages for {sheet["pages"]}, {sheet["type_size_pt"]} pt')
    for (pages, detail, size), sheets in sorted(counted.items()):
        print(f"{pages} page(s), {detail}, {size} pt: {sheets} sheets")
    print(*faults, sep="\n")
    sys.exit(bool(faults))


if __name__ == "__main__":
    main()
