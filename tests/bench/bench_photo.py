"""How often a photo with a card keeps within what is claimed for it: photos made by hand, and two measured cameras.

Run `python tests/bench/bench_photo.py` (from the project's top) for the tables. The cameras, lights and test colours
are those that colour-science carries; noise and a phone's beautifying are only in the photos made by hand.
"""

import statistics
import sys
from pathlib import Path

if __name__ == "__main__":
    sys.path[:0] = [str(Path(__file__).parents[2]), str(Path(__file__).parents[1])]

from dyesession.colour.ciede2000 import de00


def main() -> None:
    from published.test_colour_cameras import CAMERAS, KINDS
    from published.test_colour_cameras import photographed as by_camera

    from tests.colour.test_photo import TRIALS, misses, photographed

    told = misses(photographed)
    held = statistics.fmean(miss <= claimed for miss, claimed in told)
    mean, claimed = (statistics.fmean(column) for column in zip(*told, strict=True))
    print(f"Photos made by hand (noise, cast, shading, coarse yarn), {TRIALS}: within the claim {held:.0%}, "
          f"mean miss {mean:.2f}, mean claim {claimed:.2f}")  # fmt: skip
    print("Two measured cameras with a grey card: light, share within the claim, mean and 95 % miss, claim")
    for kind, lights in KINDS.items():
        read = [one for camera in CAMERAS for light in lights for one in by_camera(camera, light, kind)]
        off = sorted(de00(lab, reading.lab) for lab, reading in read)
        within = statistics.fmean(de00(lab, reading.lab) <= reading.plus_minus for lab, reading in read)
        print(f"  {kind:10} {within:4.0%}  {statistics.fmean(off):5.2f} {off[int(0.95 * len(off))]:5.2f}  "
              f"{statistics.fmean(reading.plus_minus for _, reading in read):5.2f}   ({len(read)} colours)")  # fmt: skip


if __name__ == "__main__":
    main()
