"""Capability indices against the handbook's example."""

import numpy as np
import pytest

from scalewright.lutherie.capability import capability
from scalewright.lutherie.errors import ToleranceError
from scalewright.lutherie.ruling import Interval

PRINTED = 1e-10


@pytest.mark.source("NIST/SEMATECH e-Handbook of Statistical Methods, 6.1.6: from memory, recomputed (metrology.json)")
def test_the_example_of_the_handbook():
    """Limits 8 and 20, mean 16, standard deviation 2, target 14: Cp 1, Cpk 2/3, Cpm 0.7071."""
    found = capability(np.array([16.0]), np.array([2.0]), Interval(8.0, 20.0), 14.0)
    assert (found.cp[0], found.cpk[0], found.cpm[0]) == pytest.approx((1.0, 2.0 / 3.0, 0.707106781187), abs=PRINTED)


def test_no_spread_is_infinitely_capable_until_it_is_off():
    """Without spread the indices are infinite, and minus infinite outside the tolerance."""
    found = capability(np.array([0.0, 2.0]), np.zeros(2), Interval(-1.0, 1.0), 0.0)
    assert found.cpk.tolist() == [np.inf, -np.inf]


def test_a_tolerance_of_nothing_is_refused():
    """There is no capability against no tolerance."""
    with pytest.raises(ToleranceError):
        capability(np.zeros(1), np.ones(1), Interval(0.0, 0.0), 0.0)
