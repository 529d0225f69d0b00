"""Compensation: where the saddle, and the nut, go for these strings on this board.

``setbacks`` finds the best positions of many strings at once, ``string_sets`` of many boards, and
``compensate`` makes the answer, with what else is asked about the bridge: a straight ``slot``, saddles of
limited travel, a ``bridge`` that is glued already, its ``placement`` for several string sets, and how the
board compares after ``reslotting``.
"""

from scalewright.lutherie.compensation.answer import Compensation, FrettedNote, StringCompensation
from scalewright.lutherie.compensation.bridge import BridgeAdvice, GluedBridge
from scalewright.lutherie.compensation.compensate import compensate, compensate_all
from scalewright.lutherie.compensation.order import BridgeWork, Order, StringSet
from scalewright.lutherie.compensation.placement import Placement
from scalewright.lutherie.compensation.reslotting import Reslotting
from scalewright.lutherie.compensation.setbacks import BestSetbacks, Freedom, best_setbacks
from scalewright.lutherie.compensation.slot import SlotFit, StraightSlot, Travel, TravelFit
from scalewright.lutherie.compensation.string_sets import Preference

__all__ = [
    "BestSetbacks",
    "BridgeAdvice",
    "BridgeWork",
    "Compensation",
    "Freedom",
    "FrettedNote",
    "GluedBridge",
    "Order",
    "Placement",
    "Preference",
    "Reslotting",
    "SlotFit",
    "StraightSlot",
    "StringCompensation",
    "StringSet",
    "Travel",
    "TravelFit",
    "best_setbacks",
    "compensate",
    "compensate_all",
]
