"""Scalar kernels, one file a phenomenon; they import numpy, numba and math alone.

compiled        how kernels are compiled and where compiled code is kept
air             heat carried by air, the half-fan rule
infiltration    wind and stack through a leaky envelope
envelope        layered surfaces as chains of capacities, sol-air temperature
ground          heat to the ground under slabs, crawlspaces and basements
crawlspace      air through foundation vents
ducts           the air path from return grille to register
doorways        air exchanged through an opening between two rooms
"""
